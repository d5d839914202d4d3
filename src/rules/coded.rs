//! Closed sets whose values have a code in a file.

/// A closed set of values, each with the code that stands for it in a file and in an output.
pub trait Coded: Copy + 'static {
    /// All of them, in the order in which they are offered.
    const EVERY: &'static [Self];

    /// The code.
    #[must_use]
    fn code(self) -> &'static str;
}

/// Gives a closed set its codes once: `COUNT`, `ALL` in the order given here, `code`, `from_code`, and
/// [`Coded`]. A value that is missing here is an error of the compiler.
///
/// ```
/// #[derive(Clone, Copy, Debug, PartialEq)]
/// enum Half {
///     Left,
///     Right,
/// }
///
/// rules::codes!(Half {
///     Left = "left",
///     Right = "right",
/// });
///
/// assert_eq!(Half::from_code("right"), Some(Half::Right));
/// assert_eq!(Half::ALL.map(Half::code), ["left", "right"]);
/// ```
#[macro_export]
macro_rules! codes {
    ($set:ident { $($value:ident = $code:literal),+ $(,)? }) => {
        impl $set {
            /// How many there are.
            pub const COUNT: usize = [$($code),+].len();

            /// All of them, in the order in which they are offered.
            pub const ALL: [$set; $set::COUNT] = [$($set::$value),+];

            /// The code in a file and in an output.
            #[must_use]
            pub const fn code(self) -> &'static str {
                match self {
                    $($set::$value => $code),+
                }
            }

            /// The one of that code.
            #[must_use]
            pub fn from_code(code: &str) -> Option<$set> {
                $set::ALL.into_iter().find(|one| one.code() == code)
            }
        }

        impl $crate::Coded for $set {
            const EVERY: &'static [$set] = &$set::ALL;

            fn code(self) -> &'static str {
                $set::code(self)
            }
        }
    };
}
