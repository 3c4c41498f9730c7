//! Numbers written to a fixed count of decimals.

use super::exact::nearest;

/// `over / under` to `decimals` decimals, half away from zero. What rounds to
/// nothing has no sign: there is no `-0`.
pub(in crate::engine::units) fn fixed(over: i128, under: i128, decimals: u32) -> String {
    let scale = 10_i128.saturating_pow(decimals);
    let scaled = nearest(over.saturating_mul(scale), under);
    let sign = if scaled < 0 { "-" } else { "" };
    let (whole, part) = (scaled.abs() / scale, scaled.abs() % scale);
    if decimals == 0 {
        return format!("{sign}{whole}");
    }
    let width = usize::try_from(decimals).unwrap_or(0);
    format!("{sign}{whole}.{part:0width$}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn decimals_are_filled_and_halves_go_away_from_zero() {
        assert_eq!(fixed(37, 2, 1), "18.5");
        assert_eq!(fixed(37, 2, 0), "19");
        assert_eq!(fixed(-37, 2, 0), "-19");
        assert_eq!(fixed(7, 1, 2), "7.00");
        assert_eq!(fixed(1, 20, 2), "0.05");
    }

    #[test]
    fn nothing_has_no_sign() {
        assert_eq!(fixed(-1, 1000, 2), "0.00");
        assert_eq!(fixed(-4, 10, 0), "0");
        assert_eq!(fixed(-5, 1000, 2), "-0.01");
    }
}
