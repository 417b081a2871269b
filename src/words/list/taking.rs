//! What the jeweller reads: inviting a couple, taking a list in, and what a couple said beside what was measured.

use chrono::NaiveDate;

use super::super::format;
use crate::archive::list::{LIMIT, ListError};
use crate::book::preparation_list::PreparationList;

pub const INVITE: &str = "Invite to the list";
pub const INVITE_INTRO: &str = "They open the link on their own phone and fill in a short list before you meet: rings they own, wishes, dates. What you \
write here stands in the link after its # sign: web servers never see that part.";
pub const FIRST: &str = "First name";
pub const SECOND: &str = "Second name";
pub const REGION: &str = "Bank holidays of";
pub const LINK: &str = "The link";
pub const SHARE_LINK: &str = "Share the link";
pub const COPY_LINK: &str = "Copy the link";
pub const LINK_SHARED: &str = "The link is on its way";
pub const LINK_COPIED: &str = "Link copied";
pub const LINK_STAYED: &str = "The link was not passed on. It can be selected and copied by hand.";
pub const MESSAGE: &str =
    "A short list to look at before we meet about your wedding bands. It stays on your phone until you send it:";

pub const TAKE_IN: &str = "Take in a list";
pub const TAKE_IN_INTRO: &str = "Open the file that a couple sent you, or paste their whole message. Nothing is written down before you have seen it.";
pub const PASTE: &str = "Their message";
pub const OPEN_FILE: &str = "Open a file";
pub const NOT_OPENED: &str = "Choose the file again: this phone did not hand it over.";
pub const LEFT_OUT: &str = "Left out";
pub const INTO: &str = "Take it into";
pub const NEW_COUPLE: &str = "A new couple";
pub const FIND: &str = "Find by any word";
pub const WHO_IS_WHO: &str = "Who is who";
pub const TAKE_IT_IN: &str = "Take it in";
pub const SAID: &str = "What they said";
pub const SAID_BY_THEM: &str = "Said by the couple";
pub const MEASURED_BY_US: &str = "Measured by us";
pub const NO_LIST_YET: &str = "No list has come from them yet.";
pub const ONE_LIST: &str =
    "Their words, as they wrote them. What you measure and settle stands beside them, never in their place.";
pub const SAID_NO_BEFORE: &str = "They said no before and say yes now: ask them, and write it down under “May be recorded”. Until then they stay on this \
phone.";
pub const AGAIN_SAME: &str = "This list has been taken in already, and nothing in it has changed.";
pub const AGAIN_NEWER: &str =
    "This list has been taken in before. What has changed since takes the place of what they said then.";
pub const WHICH_LIST: &str = "Which list counts";
pub const KEEP_NEWER_LIST: &str = "Keep the newer list";
pub const USE_OLDER_LIST: &str = "Use this older one";
pub const NOT_SAID: &str =
    "They left open whether you may write this down. Ask them: until then nothing stands under “May be recorded”.";
pub const NOTHING_SAID: &str = "Nothing was answered.";
pub const ANOTHER: &str = "Another file or message";
pub const TAKEN_IN: &str = "List taken in";

/// A no, and whether there is more in the list than it lets through.
pub fn says_no(more: bool) -> String {
    let no = "They say no to being recorded. Only their names and that no are written down, and the couple stays on this phone.";
    if more { format!("{no} Read the rest now, or let them show it to you.") } else { no.to_owned() }
}

/// A list that was saved on `saved`, where the same list as it was saved on `known` is there.
pub fn older_list(saved: NaiveDate, known: NaiveDate) -> String {
    let (saved, known) = (format::day(saved), format::day(known));
    format!("This list was saved on {saved}. You already have the same list as saved on {known}.")
}

/// A list of a newer version, with so many answers that this one does not know.
pub fn newer_minor(count: usize) -> String {
    let newer = "It was made with a newer version of the list.";
    match count {
        0 => format!("{newer} What this version does not know is kept with it."),
        1 => format!("{newer} One answer that this version does not know is kept, not shown."),
        many => format!("{newer} {many} answers that this version does not know are kept, not shown."),
    }
}

/// The couple from whose page a list was opened that names two others.
pub fn not_theirs(names: &str) -> String {
    format!("These names are not those of {names}, from whose page you came. Choose whose list it is.")
}

/// "12 answers".
pub fn answers(count: usize) -> String {
    format::counted(count as i64, "answer", "answers")
}

/// What a row about a couple's lists says.
pub fn lists(said: &[&PreparationList]) -> String {
    match said {
        [] => "none yet".to_owned(),
        [only] => answers(only.answers.len()),
        many => format!("{} lists", many.len()),
    }
}

/// Answers that this version does not know and that are left out.
pub fn unknown(count: usize) -> String {
    format!("{} to questions that are not on the list.", answers(count))
}

/// Who of the list is who of the couple: "Ada is Ines, Ben is Callum".
pub fn who_is_who(list: [&str; 2], couple: [&str; 2]) -> String {
    format!("{} is {}, {} is {}", list[0], couple[0], list[1], couple[1])
}

/// "Hand: left", under the heading that says whose words they are.
pub fn beside(what: &str, answer: &str) -> String {
    format!("{what}: {answer}")
}

/// Why what was handed over cannot be taken in.
pub fn error(why: ListError) -> String {
    match why {
        ListError::Empty => "Choose a file with something in it: this one is empty.".to_owned(),
        ListError::TooLarge => format!(
            "Choose a smaller file: a list is never larger than {} kB, and this is.",
            format::count(LIMIT as i64 / 1000)
        ),
        ListError::Zip => "Choose the list itself: this is a packed folder, so unpack it first.".to_owned(),
        ListError::Utf16 => {
            "Choose the file as it was sent: this one was saved as UTF-16, so save it as UTF-8.".to_owned()
        }
        ListError::NotText => "Choose the file with the list: this is a picture, a sound or the like.".to_owned(),
        ListError::NoList => "Enter the whole message, its last line too: there is no list in this.".to_owned(),
        ListError::CutOff => {
            "Enter the whole message or ask for the file: this list is cut off before its end.".to_owned()
        }
        ListError::TooDeep => "Choose the file as it was sent: this one is nested far deeper than any list.".to_owned(),
        ListError::NotOurs => "Choose the file with the list: this was made by another program.".to_owned(),
        ListError::OtherKind => "Choose the file with the list: this is one with couples of a book.".to_owned(),
        ListError::Newer(major) => {
            format!(
                "Check for a new version of Bandwright: this list has format {major}, which this version cannot read."
            )
        }
        ListError::Damaged => {
            "Enter it again or ask for the file: a part of this list is missing or damaged.".to_owned()
        }
    }
}
