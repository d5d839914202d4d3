//! Where somebody can be hurt: short, and for qualified people and local rules to decide. What an official does
//! with an injury stands in the same words as in a match (`CARE_STOP` and its neighbours).

use rules::Rules;

/// Something to take care of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Care {
    /// The floor and what is around it.
    Floor,
    /// Net and posts.
    Posts,
    /// Hair and jewellery.
    Jewellery,
    /// A blow to the head.
    Head,
    /// Blood.
    Blood,
    /// Heat.
    Heat,
    /// Thunder.
    Thunder,
    /// The lights go out.
    Lights,
}

impl Care {
    /// All of them.
    pub const ALL: [Care; 8] = [
        Care::Head,
        Care::Blood,
        Care::Floor,
        Care::Posts,
        Care::Jewellery,
        Care::Heat,
        Care::Thunder,
        Care::Lights,
    ];

    /// Its part of an address.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Care::Floor => "floor",
            Care::Posts => "posts",
            Care::Jewellery => "jewellery",
            Care::Head => "head",
            Care::Blood => "blood",
            Care::Heat => "heat",
            Care::Thunder => "thunder",
            Care::Lights => "lights",
        }
    }

    /// The page of that part of an address.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Care> {
        Care::ALL.into_iter().find(|care| care.code() == code)
    }
}

words! { CareWords in learn::care;
    /// What it is called.
    care_name(care: Care) -> &'static str;
    /// What is said of it.
    care_lines(care: Care, rules: &Rules) -> Vec<String>;
}
