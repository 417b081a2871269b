//! Starts the app in the page. A panic aborts: in WebAssembly it cannot be unwound. Nothing in the core panics, whatever
//! is typed, and drafts survive one.

fn main() {
    #[cfg(target_arch = "wasm32")]
    bandwright::screens::start();
}
