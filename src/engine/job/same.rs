//! Which two observations say the same, however it was typed: 10' is 120 in.

use super::fact::Fact;
use super::observation::Observation;
use crate::engine::particular::Value;
use crate::engine::survey::Joists;
use crate::engine::units::Typed;

impl Observation {
    /// Do both say the same of the same thing?
    pub fn says_the_same(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Fact(one), Self::Fact(other)) => one.says_the_same(other),
            (Self::Particular(one), Self::Particular(other)) => {
                one.of == other.of && one.what == other.what && one.is.says_the_same(&other.is)
            }
            (Self::CutBack(one), Self::CutBack(other)) => {
                one.opening == other.opening
                    && values(&one.width) == values(&other.width)
                    && values(&one.finish) == values(&other.finish)
            }
            (Self::JoistCenter(one), Self::JoistCenter(other)) => {
                one.of == other.of && one.joist == other.joist && one.center.value == other.center.value
            }
            (Self::Joists(one), Self::Joists(other)) => {
                let values = |it: &Joists| (it.room, it.run, it.count, it.along, it.first.value, it.spacing.value);
                values(one) == values(other)
            }
            (Self::Corner(one), Self::Corner(other)) => {
                one.at == other.at && one.trust == other.trust && values(&one.angle) == values(&other.angle)
            }
            _ => self == other,
        }
    }
}

impl Fact {
    /// Do both say the same?
    pub fn says_the_same(&self, other: &Self) -> bool {
        if let (Some((one, length)), Some((what, other))) = (self.length(), other.length()) {
            return one == what && length.value == other.value;
        }
        match (self, other) {
            (Self::FramingLimit(one), Self::FramingLimit(other))
            | (Self::SubfloorLimit(one), Self::SubfloorLimit(other)) => one.value == other.value,
            (Self::Sheet(one), Self::Sheet(other)) => {
                one.width.value == other.width.value && one.length.value == other.length.value
            }
            _ => self == other,
        }
    }
}

impl Value {
    /// Do both come to the same?
    pub fn says_the_same(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Length(one), Self::Length(other)) => one.value == other.value,
            (Self::Amount(one), Self::Amount(other)) => one.value == other.value,
            _ => self == other,
        }
    }
}

const fn values<Q>(typed: &Option<Typed<Q>>) -> Option<&Q> {
    match typed {
        Some(typed) => Some(&typed.value),
        None => None,
    }
}
