//! New versions of the app: noticed, announced, and taken up only when the person agrees.
//!
//! INVARIANT: no page is reloaded that did not ask for it through [`apply`]; the caller saves drafts first.

use std::cell::Cell;
use std::rc::Rc;

use js_sys::{Object, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{EventTarget, ServiceWorkerContainer, ServiceWorkerRegistration, ServiceWorkerState, window};

thread_local! {
    static ASKED: Cell<bool> = const { Cell::new(false) };
    static RELOADED: Cell<bool> = const { Cell::new(false) };
}

/// Registers the service worker and looks for new versions now, whenever the page is shown again, and whenever the
/// phone finds a network. `on_ready` is called when a newer version is waiting, or has been taken up in another tab;
/// it may be called more than once. Does nothing where the browser has no service workers.
pub fn watch(on_ready: impl Fn() + 'static) {
    let Some(container) = container() else { return };
    let on_ready: Rc<dyn Fn()> = Rc::new(on_ready);
    follow_controller(&container, on_ready.clone());
    for (target, event) in [(window().map(EventTarget::from), "online"), (document(), "visibilitychange")] {
        if let Some(target) = target {
            listen(&target, event, check);
        }
    }
    spawn_local(async move {
        if let Some(registration) = register(&container).await {
            follow_registration(&container, &registration, on_ready);
        }
    });
}

/// Looks for a newer version, if there is a network and the page is being looked at.
pub fn check() {
    let Some(container) = container() else { return };
    let seen = window().and_then(|w| w.document()).is_some_and(|d| !d.hidden());
    if !seen || !window().is_some_and(|w| w.navigator().on_line()) {
        return;
    }
    spawn_local(async move {
        if let Some(registration) = registration(&container).await
            && let Ok(update) = registration.update()
        {
            // Without the server there is nothing new to find: the kept version goes on.
            let _ = JsFuture::from(update).await;
        }
    });
}

/// Takes up the waiting version and reloads this page once. Save what is half-typed before calling it.
pub fn apply() {
    ASKED.set(true);
    let Some(container) = container() else { return reload() };
    spawn_local(async move {
        match registration(&container).await.and_then(|r| r.waiting()) {
            // The reload follows when the waiting worker has taken over: see `follow_controller`.
            Some(waiting) if waiting.post_message(&"SKIP_WAITING".into()).is_ok() => {}
            // Already taken up, from another tab.
            _ => reload(),
        }
    });
}

/// Reloads when this page asked for the new worker; tells when another tab did. The first worker ever is no news.
fn follow_controller(container: &ServiceWorkerContainer, on_ready: Rc<dyn Fn()>) {
    let controlled = Cell::new(container.controller().is_some());
    listen(container, "controllerchange", move || {
        if ASKED.get() {
            reload();
        } else if controlled.replace(true) {
            on_ready();
        }
    });
}

fn follow_registration(
    container: &ServiceWorkerContainer,
    registration: &ServiceWorkerRegistration,
    on_ready: Rc<dyn Fn()>,
) {
    if registration.waiting().is_some() && container.controller().is_some() {
        on_ready();
    }
    let watched = registration.clone();
    let container = container.clone();
    let follow = move || {
        let Some(worker) = watched.installing() else { return };
        let (on_ready, container, state) = (on_ready.clone(), container.clone(), worker.clone());
        listen(&worker, "statechange", move || {
            if state.state() == ServiceWorkerState::Installed && container.controller().is_some() {
                on_ready();
            }
        });
    };
    follow();
    listen(registration, "updatefound", follow);
}

async fn register(container: &ServiceWorkerContainer) -> Option<ServiceWorkerRegistration> {
    // The browser's own cache must never answer for the worker or what it imports.
    let options = Object::new();
    Reflect::set(&options, &"updateViaCache".into(), &"none".into()).ok()?;
    let promise = container.register_with_options("sw.js", options.unchecked_ref());
    JsFuture::from(promise).await.ok()?.dyn_into().ok()
}

async fn registration(container: &ServiceWorkerContainer) -> Option<ServiceWorkerRegistration> {
    JsFuture::from(container.get_registration()).await.ok()?.dyn_into().ok()
}

/// `None` in a page that the browser does not trust (plain http beyond this machine), where the property is missing.
fn container() -> Option<ServiceWorkerContainer> {
    let navigator = window()?.navigator();
    Reflect::get(&navigator, &"serviceWorker".into()).ok()?.dyn_into().ok()
}

fn document() -> Option<EventTarget> {
    window()?.document().map(EventTarget::from)
}

fn reload() {
    if !RELOADED.replace(true)
        && let Some(window) = window()
    {
        let _ = window.location().reload();
    }
}

/// Listens for as long as the page lives.
fn listen(target: &EventTarget, event: &str, handler: impl Fn() + 'static) {
    let handler = Closure::<dyn Fn()>::new(handler);
    if target.add_event_listener_with_callback(event, handler.as_ref().unchecked_ref()).is_ok() {
        handler.forget();
    }
}
