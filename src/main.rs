fn main() {
    #[cfg(target_arch = "wasm32")]
    bandwright::app::start();
}
