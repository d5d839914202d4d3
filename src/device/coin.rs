//! Chance: a fair coin and names that nobody else has, both from the browser's source of
//! randomness (W3C Web Cryptography API).

use js_sys::Math;

use app::machine::{Face, NoRandom};

use super::reach::{method, property, window};

/// Tosses a fair coin.
///
/// One bit of one random byte: all 256 values of the byte are equally likely, and exactly 128 of
/// them have the bit set, so neither side is favoured. (A remainder by a number that does not
/// divide 256 would favour the low results.)
///
/// # Errors
/// Where the browser has no such source. No weaker one is used in its place.
pub fn toss_coin() -> Result<Face, NoRandom> {
    let mut byte = [0_u8; 1];
    fill(&mut byte)?;
    Ok(if byte[0] & 1 == 1 {
        Face::Heads
    } else {
        Face::Tails
    })
}

/// A new name for a match: 128 bits that no other phone will draw. Need not be secret, only
/// different, so a browser without a good source still gets one from its ordinary one.
pub fn new_id() -> String {
    if let Some(id) = random_uuid() {
        return id;
    }
    let mut bytes = [0_u8; 16];
    if fill(&mut bytes).is_err() {
        for byte in &mut bytes {
            // Below 256, so the cast only cuts the fraction.
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
            let drawn = (Math::random() * 256.0) as u8;
            *byte = drawn;
        }
    }
    // Version 4, variant 10, as RFC 9562 sections 4 and 5.4 have them.
    bytes[6] = bytes[6] & 0x0f | 0x40;
    bytes[8] = bytes[8] & 0x3f | 0x80;
    let mut id = String::with_capacity(36);
    for (place, byte) in bytes.iter().enumerate() {
        if matches!(place, 4 | 6 | 8 | 10) {
            id.push('-');
        }
        id.push_str(&format!("{byte:02x}"));
    }
    id
}

/// The browser's own, there only where the page came safely or from this machine.
fn random_uuid() -> Option<String> {
    let crypto = property(window()?.as_ref(), "crypto")?;
    method(&crypto, "randomUUID")?
        .call0(&crypto)
        .ok()?
        .as_string()
}

fn fill(bytes: &mut [u8]) -> Result<(), NoRandom> {
    window()
        .and_then(|window| window.crypto().ok())
        .ok_or(NoRandom)?
        .get_random_values_with_u8_array(bytes)
        .map(drop)
        .map_err(|_| NoRandom)
}
