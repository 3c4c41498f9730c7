//! A worked case, and how its answer is held against what is expected.

use serde::Deserialize;
use serde_json::{Map, Value};

/// One line of a file of worked cases.
#[derive(Debug, Deserialize)]
pub struct Case {
    pub id: String,
    pub kind: String,
    pub input: Map<String, Value>,
    expect: Map<String, Value>,
    #[serde(default)]
    tol: Map<String, Value>,
}

/// What was worked out, by the names of the fields that are expected.
pub type Got = Map<String, Value>;

impl Case {
    pub fn read(line: &str) -> Result<Self, String> {
        serde_json::from_str(line).map_err(|error| error.to_string())
    }

    /// A number of the input.
    pub fn number(&self, name: &str) -> Result<f64, String> {
        number_in(&self.input, name)
    }

    /// A word of the input.
    pub fn word(&self, name: &str) -> Result<&str, String> {
        self.input.get(name).and_then(Value::as_str).ok_or_else(|| format!("{name} is no word"))
    }

    /// A part of the input with names of its own.
    pub fn part(&self, name: &str) -> Result<&Map<String, Value>, String> {
        self.input.get(name).and_then(Value::as_object).ok_or_else(|| format!("{name} is missing"))
    }

    /// A list of numbers.
    pub fn numbers(&self, name: &str) -> Result<Vec<f64>, String> {
        let numbers = self.input.get(name).cloned().unwrap_or_default();
        serde_json::from_value(numbers).map_err(|error| format!("{name}: {error}"))
    }

    /// A list of lists of numbers.
    pub fn rows(&self, name: &str) -> Result<Vec<Vec<f64>>, String> {
        let rows = self.input.get(name).cloned().unwrap_or_default();
        serde_json::from_value(rows).map_err(|error| format!("{name}: {error}"))
    }

    /// `field got expected tolerance` for each that is not as expected.
    pub fn failures(&self, got: &Got) -> Vec<String> {
        let nothing = Value::Null;
        let each = self.expect.iter().filter_map(|(field, expected)| {
            let got = got.get(field).unwrap_or(&nothing);
            let tolerance = self.tol.get(field).unwrap_or(&nothing);
            (!agree(got, expected, tolerance)).then(|| format!("{field} {got} {expected} {tolerance}"))
        });
        each.collect()
    }
}

pub fn number_in(part: &Map<String, Value>, name: &str) -> Result<f64, String> {
    part.get(name).and_then(Value::as_f64).ok_or_else(|| format!("{name} is no number"))
}

/// Is `got` as expected: numbers within the tolerance, lists element by element, all else
/// exactly?
fn agree(got: &Value, expected: &Value, tolerance: &Value) -> bool {
    match (got, expected) {
        (Value::Array(got), Value::Array(expected)) => {
            got.len() == expected.len()
                && got.iter().zip(expected).all(|(got, expected)| agree(got, expected, tolerance))
        }
        (Value::Number(got), Value::Number(expected)) => {
            let (Some(got), Some(expected)) = (got.as_f64(), expected.as_f64()) else { return false };
            let within = |kind: &str| tolerance.get(kind).and_then(Value::as_f64);
            let most = within("abs").or_else(|| within("rel").map(|part| part * expected.abs())).unwrap_or(0.0);
            // An expected value is written with few digits: its last one may not decide.
            (got - expected).abs() <= most * (1.0 + 1e-9) + 1e-12
        }
        _ => got == expected,
    }
}
