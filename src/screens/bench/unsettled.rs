//! Where two phones say different things of what a calculator would write down, that is settled first: neither side is
//! shown here, and the button would replace both.

use crate::parts::el::maybe;
use crate::parts::layout::{block, para};
use leptos::prelude::*;

use super::{Opened, Opener};
use crate::app::address::{Address, Part};
use crate::book::field::Field;
use crate::parts::button::{Weight, link_button};
use crate::trade::wearer::Wearer;
use crate::words::{bench as say, phones as say_phones};

/// A handle: copy it freely.
#[derive(Clone, Copy)]
pub struct Unsettled {
    opener: Option<Opener>,
    differs: Memo<bool>,
}

impl Unsettled {
    /// For a calculator that writes these fields of a couple and of one of the two.
    pub fn by(opened: &Opened, writes: fn(&Field, Wearer) -> bool) -> Unsettled {
        let (app, opener) = (opened.app, opened.opener);
        let differs = move |Opener { id, who }| app.couple(id, |couple| couple.0.differs(|field| writes(field, who)));
        Unsettled { opener, differs: Memo::new(move |_| opener.and_then(differs).unwrap_or(false)) }
    }

    /// Whether it waits. Whoever asks hears of a change.
    pub fn is_so(self) -> bool {
        self.differs.get()
    }

    /// Says so, with the way to where it is settled.
    pub fn caution(self) -> AnyView {
        maybe(move || {
            let Opener { id, .. } = self.opener.filter(|_| self.is_so())?;
            let to = Address::Part(id, Part::Differences).to_string();
            let link = link_button(Weight::Quiet, say_phones::DIFFERENCES, to);
            Some(block("bench-missing", vec![para("caution", say::HELD), link]))
        })
    }
}
