//! The happy ways are in pwa.spec.js, with a real server; here is the way without a worker to be had.

use std::cell::Cell;
use std::rc::Rc;

use bandwright::app::updates;
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::wasm_bindgen_test;
use web_sys::window;

#[wasm_bindgen_test]
async fn a_host_without_a_worker_is_no_error_and_no_news() {
    let told = Rc::new(Cell::new(0));
    let counted = told.clone();
    updates::watch(move || counted.set(counted.get() + 1));
    updates::check();
    let container = window().unwrap().navigator().service_worker();
    pause(500).await;
    let registration = JsFuture::from(container.get_registration()).await.unwrap();
    assert!(registration.is_undefined(), "the test server has no sw.js");
    assert_eq!(told.get(), 0);
}

async fn pause(milliseconds: i32) {
    let promise = js_sys::Promise::new(&mut |done, _| {
        window().unwrap().set_timeout_with_callback_and_timeout_and_arguments_0(&done, milliseconds).unwrap();
    });
    JsFuture::from(promise).await.unwrap();
}
