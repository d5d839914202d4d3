//! The values of the form's select boxes, which live only in it and in its draft.

use rules::{Edition, Sets, SubstitutionPolicy, UnderNet, WarmUpStyle};

pub(super) fn edition_code(edition: Edition) -> &'static str {
    match edition {
        Edition::E2025 => "2025",
        Edition::E2021 => "2021",
    }
}

pub(super) fn edition(code: &str) -> Edition {
    match code {
        "2021" => Edition::E2021,
        _ => Edition::E2025,
    }
}

/// The value of a format in the form.
pub fn sets_code(sets: Sets) -> String {
    match sets {
        Sets::BestOf(n) => format!("best-of-{n}"),
        Sets::Fixed(n) => format!("fixed-{n}"),
    }
}

pub(super) fn sets(code: &str) -> Option<Sets> {
    match code.rsplit_once('-')? {
        ("best-of", n) => Some(Sets::BestOf(n.parse().ok()?)),
        ("fixed", n) => Some(Sets::Fixed(n.parse().ok()?)),
        _ => None,
    }
}

pub(super) fn policy_code(policy: SubstitutionPolicy) -> &'static str {
    match policy {
        SubstitutionPolicy::Paired => "paired",
        SubstitutionPolicy::SamePlace => "same-place",
        SubstitutionPolicy::Free => "free",
    }
}

pub(super) fn policy(code: &str) -> SubstitutionPolicy {
    match code {
        "paired" => SubstitutionPolicy::Paired,
        "free" => SubstitutionPolicy::Free,
        _ => SubstitutionPolicy::SamePlace,
    }
}

pub(super) fn style_code(style: WarmUpStyle) -> &'static str {
    match style {
        WarmUpStyle::Shared => "shared",
        WarmUpStyle::Separate => "separate",
    }
}

pub(super) fn style(code: &str) -> WarmUpStyle {
    match code {
        "shared" => WarmUpStyle::Shared,
        _ => WarmUpStyle::Separate,
    }
}

pub(super) fn under_net_code(under_net: UnderNet) -> &'static str {
    match under_net {
        UnderNet::Standard => "standard",
        UnderNet::Junior => "junior",
    }
}

pub(super) fn under_net(code: &str) -> UnderNet {
    match code {
        "junior" => UnderNet::Junior,
        _ => UnderNet::Standard,
    }
}
