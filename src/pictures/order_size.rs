//! The ladder of an order size: from the reading to the size to make, each of the two with its name.

use super::Picture;
use super::ladder::{Ladder, Named, Shift, Single, ladder};
use crate::answers::order::{OrderAnswer, SizedBand};
use crate::trade::measure::Length;
use crate::trade::sizing::{self, Step};
use crate::words::bench as say;
use crate::words::sizing as say_sizing;

/// None while there is no answer.
pub fn order_size(found: &OrderAnswer) -> Option<Picture> {
    let sized = found.sized.as_ref()?;
    let stated = found.typed.size.meant()?.stated;
    let joint = found.typed.joint.meant();
    let (order, answer, scale) = (&sized.order, sized.answer(), sized.scale);
    let named = |at| Named { at, label: say::size_called(scale.name(at)) };
    let ticks = sizing::all(scale.system, scale.step).map(|size| Named {
        at: size.circumference(),
        label: if size.is_on(Step::Whole) { say_sizing::size_name(size) } else { String::new() },
    });
    let shifts = answer.shifts.iter().filter(|shift| shift.amount != Length::ZERO);
    let other = sized.answer_worn(sized.worn.other());
    Some(ladder(&Ladder {
        ticks: ticks.collect(),
        reading: Named {
            at: order.as_read,
            label: match order.combined {
                Some(_) => say::size_called(scale.name_read(order.as_read)),
                None => say_sizing::stated_name(stated),
            },
        },
        singles: singles(sized),
        shifts: shifts.map(|it| Shift { label: say::shift_short(&it.kind).to_owned(), amount: it.amount }).collect(),
        best: answer.exact,
        range: if answer.joint_alone() { answer.base } else { (answer.low, answer.high) },
        order: named(answer.size),
        worn: sized.worn,
        other: (other.size != answer.size).then(|| named(other.size)),
        joint: joint.map(|it| Named { at: it.circumference(), label: say_sizing::stated_name(it.stated) }),
    }))
}

/// Each of several readings as it was read, and whether it stands apart.
fn singles(sized: &SizedBand) -> Vec<Single> {
    let all = sized.singles().into_iter().map(|(reading, apart)| Single {
        read: Named { at: reading.as_read, label: say::size_called(sized.scale.name_read(reading.as_read)) },
        apart,
    });
    all.collect()
}
