//! The boxes of the sheet, each with a name that an address can hold.

/// A box of the sheet, in the order in which it is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SheetBox {
    /// Teams, result, what is known of the match.
    Heading,
    /// A set, from 1.
    Set(u8),
    /// The sanctions.
    Sanctions,
    /// The remarks.
    Remarks,
    /// The team lists.
    Teams,
    /// The signatures.
    Signatures,
    /// The seal.
    Seal,
    /// What the marks mean.
    Key,
    /// The record of the liberos.
    Liberos,
}

impl SheetBox {
    const PLAIN: [(SheetBox, &'static str); 8] = [
        (SheetBox::Heading, "heading"),
        (SheetBox::Sanctions, "sanctions"),
        (SheetBox::Remarks, "remarks"),
        (SheetBox::Teams, "teams"),
        (SheetBox::Signatures, "signatures"),
        (SheetBox::Seal, "seal"),
        (SheetBox::Key, "key"),
        (SheetBox::Liberos, "liberos"),
    ];

    /// Its name in an address and in the page.
    #[must_use]
    pub fn code(self) -> String {
        match self {
            SheetBox::Set(number) => format!("set-{number}"),
            plain => {
                let known = SheetBox::PLAIN.iter().find(|(of, _)| *of == plain);
                known.map_or(String::new(), |(_, code)| (*code).to_owned())
            }
        }
    }

    /// The one of that name.
    #[must_use]
    pub fn from_code(code: &str) -> Option<SheetBox> {
        if let Some(number) = code.strip_prefix("set-") {
            return number.parse().ok().map(SheetBox::Set);
        }
        let known = SheetBox::PLAIN.iter().find(|(_, of)| *of == code);
        known.map(|(plain, _)| *plain)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_box_is_found_by_its_name() {
        let plain = SheetBox::PLAIN.map(|(plain, _)| plain);
        for one in plain
            .into_iter()
            .chain([SheetBox::Set(1), SheetBox::Set(5)])
        {
            assert_eq!(SheetBox::from_code(&one.code()), Some(one));
        }
        assert_eq!(SheetBox::from_code("set-x"), None);
        assert_eq!(SheetBox::from_code(""), None);
    }
}
