fn main() {
    #[cfg(target_arch = "wasm32")]
    bandwright::screens::start();
}
