//! Random bits, for identities.

/// 128 random bits.
///
/// # Errors
/// A sentence when the browser has no randomness, without which no log may begin.
pub fn bits() -> Result<u128, String> {
    let mut bytes = [0_u8; 16];
    let crypto = web_sys::window().ok_or("there is no window")?.crypto().map_err(|error| super::message(&error))?;
    crypto.get_random_values_with_u8_array(&mut bytes).map_err(|error| super::message(&error))?;
    Ok(u128::from_le_bytes(bytes))
}
