//! Pictures that can be read without colour, each with a sentence that says the same. Only digits and fixed
//! letters are drawn, so nothing a person typed can stand in a drawing.

/// A drawing, and the same in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    /// Width and height of the drawing.
    pub size: (u32, u32),
    /// What is inside of the SVG element.
    pub inside: String,
    /// The same in words.
    pub say: String,
}
