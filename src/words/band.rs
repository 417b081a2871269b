//! Names of bands, fingers and metals.

use crate::trade::band::alloys::{Alloy, Family, Whitener};
use crate::trade::band::{Bore, Finish, Profile};
use crate::trade::wearer::{Digit, Finger, Hand};

pub fn profile(profile: Profile) -> &'static str {
    match profile {
        Profile::Flat => "flat",
        Profile::Court => "court",
        Profile::D => "D",
        Profile::FlatCourt => "flat court",
    }
}

/// What a profile is, for a couple looking on.
pub fn profile_described(profile: Profile) -> &'static str {
    match profile {
        Profile::Flat => "flat inside and out",
        Profile::Court => "domed inside and out",
        Profile::D => "flat inside, domed outside",
        Profile::FlatCourt => "domed inside, flat outside",
    }
}

pub fn bore(bore: Bore) -> &'static str {
    match bore {
        Bore::Flat => "flat inside",
        Bore::Domed => "domed inside",
    }
}

pub fn finish(finish: Finish) -> &'static str {
    match finish {
        Finish::Plain => "plain",
        Finish::Set => "set with stones",
        Finish::SetAllRound => "set all round",
        Finish::Textured => "textured",
    }
}

pub fn hand(hand: Hand) -> &'static str {
    match hand {
        Hand::Left => "left",
        Hand::Right => "right",
    }
}

pub fn digit(digit: Digit) -> &'static str {
    match digit {
        Digit::Thumb => "thumb",
        Digit::Index => "index finger",
        Digit::Middle => "middle finger",
        Digit::Ring => "ring finger",
        Digit::Little => "little finger",
    }
}

/// "left ring finger".
pub fn finger(finger: Finger) -> String {
    format!("{} {}", hand(finger.hand), digit(finger.digit))
}

/// Beside the alloy that is chosen, where there is nickel in it.
pub fn nickel(alloy: Option<&Alloy>) -> Option<&'static str> {
    let has = alloy.is_some_and(Alloy::has_nickel);
    has.then_some(
        "There is nickel in this metal: not for anybody who wants it nickel-free. Have the bench confirm what it gives \
         off.",
    )
}

/// "18 ct yellow gold", "18 ct white gold with palladium", "platinum 950".
pub fn alloy(alloy: &Alloy) -> String {
    let family = match alloy.with {
        Some(with) => format!("{} with {}", family(alloy.family), whitener(with)),
        None => family(alloy.family).to_owned(),
    };
    match (alloy.family, alloy.fineness) {
        (Family::YellowGold | Family::RoseGold | Family::WhiteGold, Some(fineness)) => {
            format!("{} ct {family}", carats(fineness))
        }
        (_, Some(fineness)) => format!("{family} {fineness}"),
        (_, None) => family,
    }
}

fn whitener(with: Whitener) -> &'static str {
    match with {
        Whitener::Palladium => "palladium",
        Whitener::Silver => "silver",
        Whitener::Nickel => "nickel",
    }
}

/// Parts in twenty-four, as the trade says them: 585 thousandths are called 14.
fn carats(fineness: u16) -> u16 {
    (f32::from(fineness) * 24.0 / 1000.0).round() as u16
}

fn family(family: Family) -> &'static str {
    match family {
        Family::YellowGold => "yellow gold",
        Family::RoseGold => "rose gold",
        Family::WhiteGold => "white gold",
        Family::Platinum => "platinum",
        Family::Palladium => "palladium",
        Family::Silver => "silver",
        Family::Titanium => "titanium",
        Family::Zirconium => "zirconium",
        Family::Tantalum => "tantalum",
        Family::TungstenCarbide => "tungsten carbide",
    }
}
