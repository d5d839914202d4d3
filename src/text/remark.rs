//! The remarks of a sheet in words.

use crate::Teams;
use reports::Remark;

words! { RemarkWords in remark;
    /// What is noted, in one sentence or two.
    remark(remark: &Remark, teams: Teams) -> String;
}
