//! The normal distribution's quantile.

/// The value that a standard normal variable stays below with this probability, for
/// probabilities strictly between 0 and 1.
///
/// Found by halving between -40 and 40 on the distribution function, which `libm`'s
/// `erfc` gives to the last digits; a hundred halvings leave nothing to find.
pub fn quantile(probability: f64) -> f64 {
    let below = |z: f64| libm::erfc(-z / std::f64::consts::SQRT_2) / 2.0;
    let (mut low, mut high) = (-40.0, 40.0);
    for _ in 0..100 {
        let middle = f64::midpoint(low, high);
        if below(middle) < probability {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_usual_quantiles() {
        // From memory: the two-sided 5 % and 1 % points of every statistics table.
        for (probability, expected) in [(0.5, 0.0), (0.975, 1.959_964), (0.995, 2.575_829)] {
            assert!((quantile(probability) - expected).abs() < 1e-6, "{probability}");
        }
        assert!((quantile(0.025) + quantile(0.975)).abs() < 1e-12);
    }
}
