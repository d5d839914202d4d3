//! The table of a pool.

use crate::asked::Asked;
use crate::command_error::CommandError;
use crate::files::Given;
use crate::print::{complain, lines, out};
use crate::{all_given, listed, with_problems, Verdict};
use reports::standings::{self, Criterion, Pool, Scheme};
use reports::{FileKind, FormProblem};

/// The table of a pool, or of results in any files.
pub fn rank(asked: &Asked) -> Result<Verdict, CommandError> {
    let rank_by = match asked.value("--by") {
        Some(codes) => codes
            .split(',')
            .map(|c| {
                Criterion::from_code(c).ok_or_else(|| CommandError::UnknownCriterion(c.to_owned()))
            })
            .collect::<Result<Vec<_>, _>>()?,
        None => Criterion::USUAL.to_vec(),
    };
    let scheme = match asked.value("--points") {
        Some(code) => {
            Scheme::from_code(code).ok_or_else(|| CommandError::UnknownScheme(code.to_owned()))?
        }
        None => Scheme::ByMargin,
    };
    let meetings = match asked.value("--meetings") {
        Some(times) => {
            let times = times.parse().ok();
            let times = times.filter(|times| (1..=standings::MAX_MEETINGS).contains(times));
            times.ok_or(CommandError::Meetings)?
        }
        None => 1,
    };
    let mut given = all_given(asked, FileKind::Pool);
    let (pool, problems, verdict) = match &mut given[..] {
        [(_, None)] => return Ok(Verdict::Unreadable),
        [(_, Some(Given::Pool(..)))] if !asked.values.is_empty() => {
            return Err(CommandError::RankedAlready);
        }
        [(_, Some(Given::Pool(pool, problems)))] => {
            ((**pool).clone(), std::mem::take(problems), Verdict::Fine)
        }
        _ => {
            let (listed, verdict) = listed(given);
            let results = listed
                .into_iter()
                .filter_map(|(name, line)| line.result(name));
            let mut pool = scheme.pool(rank_by, results.collect());
            pool.meetings = Some(meetings);
            (pool, Vec::new(), verdict)
        }
    };
    let findings = print_table(asked, &pool, &problems);
    Ok(verdict.max(Verdict::of(findings || !problems.is_empty())))
}

/// Prints a table; says whether anything in it is wrong, missing or in doubt.
fn print_table(asked: &Asked, pool: &Pool, problems: &[FormProblem]) -> bool {
    let table = standings::rank(pool);
    if asked.is("--csv") {
        for finding in &table.findings {
            complain(
                &finding.place(pool),
                &text::standings::finding(finding, pool),
            );
        }
        lines(&render::standings::csv(&table));
    } else if asked.is("--text") {
        lines(&render::standings::text(pool, &table));
    } else {
        let printed = with_problems(render::standings::json(pool, &table), problems);
        out(&format!("{printed}\n"));
    }
    !table.findings.is_empty()
}
