//! Telling the other tabs of this app that a record has changed.

use wasm_bindgen::prelude::*;
use web_sys::{BroadcastChannel, MessageEvent};

use crate::book::id::RecordId;

/// A line to the other tabs. Without `BroadcastChannel` nothing is said; what is saved is merged all the same.
#[derive(Clone)]
pub struct Tabs(Option<BroadcastChannel>);

impl Tabs {
    /// Opens the line; `heard` is called with every record that another tab has changed.
    pub fn open(heard: impl Fn(RecordId) + 'static) -> Self {
        let Ok(channel) = BroadcastChannel::new("bandwright") else { return Tabs(None) };
        let on_message = Closure::<dyn Fn(MessageEvent)>::new(move |event: MessageEvent| {
            if let Some(id) = event.data().as_string().as_deref().and_then(RecordId::parse) {
                heard(id);
            }
        });
        channel.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
        on_message.forget();
        Tabs(Some(channel))
    }

    /// Tells the others that this record has changed.
    pub fn tell(&self, id: RecordId) {
        if let Some(channel) = &self.0 {
            let _ = channel.post_message(&id.to_string().into());
        }
    }
}
