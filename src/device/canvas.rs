//! A drawing surface, and the clock of its frames.

use wasm_bindgen::JsCast;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

use super::reach::window;

/// More pixels than this to one of the page's are not seen in what moves.
const MAX_DENSITY: f64 = 2.0;

/// Milliseconds on the clock that events are stamped by.
pub fn now_ms() -> f64 {
    window()
        .and_then(|window| window.performance())
        .map_or(0.0, |performance| performance.now())
}

/// What a canvas of the page is drawn on with. Lengths are those of the page.
pub struct Canvas {
    element: HtmlCanvasElement,
    context: CanvasRenderingContext2d,
    size: (f64, f64),
    density: f64,
}

/// A colour as a style sheet has it, and how much of it covers what lies below: 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Brush<'a> {
    /// The colour.
    pub colour: &'a str,
    /// How much it covers.
    pub covers: f64,
}

impl Canvas {
    /// That of an element; none where the browser gives no means to draw on it.
    pub fn of(element: HtmlCanvasElement) -> Option<Canvas> {
        let context = element.get_context("2d").ok()??.dyn_into().ok()?;
        Some(Canvas {
            element,
            context,
            size: (0.0, 0.0),
            density: 0.0,
        })
    }

    /// Takes the size that the element has now, empties it, and gives its width and height.
    pub fn begin(&mut self) -> (f64, f64) {
        let density = window().map_or(1.0, |window| window.device_pixel_ratio());
        let density = density.clamp(1.0, MAX_DENSITY);
        let size = (
            f64::from(self.element.client_width()),
            f64::from(self.element.client_height()),
        );
        if size != self.size || (density - self.density).abs() > f64::EPSILON {
            (self.size, self.density) = (size, density);
            // Not negative, and as large as a screen.
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
            let pixels = |length: f64| (length * density).round().max(1.0) as u32;
            self.element.set_width(pixels(size.0));
            self.element.set_height(pixels(size.1));
            // Neither number can be refused.
            let _ = self.context.scale(density, density);
            self.context.set_line_cap("round");
            self.context.set_line_join("round");
            self.context.set_text_align("center");
            self.context.set_text_baseline("middle");
        }
        self.context.clear_rect(0.0, 0.0, size.0, size.1);
        size
    }

    /// Values of custom properties as they hold for the element, in the order of the names.
    pub fn colours<const N: usize>(&self, names: [&str; N]) -> [String; N] {
        let style = window().and_then(|w| w.get_computed_style(&self.element).ok()?);
        names.map(|name| {
            let value = style.as_ref().and_then(|s| s.get_property_value(name).ok());
            value.unwrap_or_default().trim().to_owned()
        })
    }

    /// A filled surface.
    pub fn surface(&self, brush: Brush<'_>, corners: &[(f64, f64)]) {
        self.path(corners);
        self.context.close_path();
        self.fill(brush);
    }

    /// A line of a width.
    pub fn line(&self, brush: Brush<'_>, width: f64, points: &[(f64, f64)]) {
        self.path(points);
        self.context.set_global_alpha(brush.covers);
        self.context.set_stroke_style_str(brush.colour);
        self.context.set_line_width(width);
        self.context.stroke();
    }

    /// A disc.
    pub fn disc(&self, brush: Brush<'_>, (x, y): (f64, f64), radius: f64) {
        self.context.begin_path();
        // Fails for a radius below 0 alone.
        let _ = self
            .context
            .arc(x, y, radius.max(0.0), 0.0, std::f64::consts::TAU);
        self.fill(brush);
    }

    /// A few letters, so high, in the middle of a place.
    pub fn letters(&self, brush: Brush<'_>, (x, y): (f64, f64), high: f64, letters: &str) {
        self.context
            .set_font(&format!("800 {high:.1}px system-ui, sans-serif"));
        self.context.set_global_alpha(brush.covers);
        self.context.set_fill_style_str(brush.colour);
        // Cannot fail for finite numbers.
        let _ = self.context.fill_text(letters, x, y);
    }

    fn fill(&self, brush: Brush<'_>) {
        self.context.set_global_alpha(brush.covers);
        self.context.set_fill_style_str(brush.colour);
        self.context.fill();
    }

    fn path(&self, points: &[(f64, f64)]) {
        self.context.begin_path();
        for (place, (x, y)) in points.iter().enumerate() {
            if place == 0 {
                self.context.move_to(*x, *y);
            } else {
                self.context.line_to(*x, *y);
            }
        }
    }
}
