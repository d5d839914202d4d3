//! The time of day where the phone is.

use js_sys::Date;
use wasm_bindgen::JsValue;

use app::machine::LocalTime;

/// The local time at these milliseconds since 1970.
#[allow(clippy::cast_precision_loss, clippy::cast_possible_wrap)] // Dates stay far inside both.
pub fn local_time(ms: i64) -> LocalTime {
    let date = Date::new(&JsValue::from_f64(ms as f64));
    LocalTime {
        year: date.get_full_year() as i32,
        month: date.get_month() + 1,
        day: date.get_date(),
        hour: date.get_hours(),
        minute: date.get_minutes(),
        second: date.get_seconds(),
    }
}

/// Milliseconds since 1970 of this local time. What no calendar has (31 April, 25 o'clock) runs
/// over into what comes after it, as a browser reckons.
#[allow(clippy::cast_possible_truncation, clippy::cast_possible_wrap)] // As above.
pub fn ms_of(time: LocalTime) -> i64 {
    let date = Date::new_with_year_month_day_hr_min_sec(
        time.year as u32,
        time.month as i32 - 1,
        time.day as i32,
        time.hour as i32,
        time.minute as i32,
        time.second as i32,
    );
    date.get_time() as i64
}

/// How far this phone's wall clock was ahead of universal time at that moment, in minutes.
#[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation)] // Whole minutes of a day.
pub fn offset_minutes(ms: i64) -> i32 {
    let date = Date::new(&JsValue::from_f64(ms as f64));
    -(date.get_timezone_offset() as i32)
}
