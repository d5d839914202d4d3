//! What the commands of the command line say of themselves: tables of their options.

use crate::command_help::*;

/// In English.
pub static WORDS: CommandHelpWords = CommandHelpWords {
    all: [
        Help {
            name: "list",
            line: "all records and paper sheets: result, seal, number of things to check",
            more: "desk list FILE…
One line a match record or paper sheet: teams, result, state of the \
         seal, number of findings.
    --csv             as a table for a spreadsheet
    \
         --clock +02:00    how far the clock in the hall is ahead; without it universal time
    \
         --json            as one JSON object
Example:  desk list saturday/*.json
",
        },
        Help {
            name: "audit",
            line: "what to check in match records, one finding a line",
            more: "desk audit FILE…
One finding a line: file, entry, code, rule, sentence. Line-ups, \
         limits, order, times, signatures,
missing fields, what was insisted on and what was \
         undone.
    --json   one JSON object with all findings
Example:  desk audit final.json
",
        },
        Help {
            name: "paper",
            line: "check paper sheets that were keyed in",
            more: "desk paper FILE…
Rebuilds the order of the rallies from the service rounds and checks \
         every other box against it;
prints both as JSON, one object a sheet.
    --text     to \
         read
    --record   the rebuilt match record instead, for desk compare
Example:  desk \
         paper --text court2.json
",
        },
        Help {
            name: "compare",
            line: "where two records of one match differ",
            more: "desk compare A B
The first rally where two records differ, the score there, and every \
         difference, explained by as few
causes as possible; as JSON. One of the two may be a \
         paper sheet. Two records of two different matches
are named as such first.
    --text   \
         to read
Example:  desk compare --text stand.json table.json
",
        },
        Help {
            name: "standings",
            line: "the table of a pool",
            more: "desk standings FILE…
The table of one file with the results of a pool, or of many match \
         records and paper sheets; as JSON,
with the reason for every place. A pool in a backup \
         of matches is named: backup.json#pool-1.
    --text          to read
    --csv           \
         as a table for a spreadsheet
    --by LIST       for records: the ranking rule, the \
         first criterion first, out of
                    wins match_points set_ratio \
         point_ratio set_difference point_difference
                    sets_won head_to_head; \
         without it wins,set_ratio,point_ratio,head_to_head
    --points NAME   for records: \
         3210 (3 for a win, 2 and 1 if it went to the last set), 210 (2 for a
                    \
         win, 1 for a loss, 0 for a default), 21, 20 or 30
    --meetings N    for records: how \
         often two teams meet; without it once
No match counts twice. What is there twice, \
         missing, mixed or in doubt is a finding: exit status 1.
Examples: desk standings --text \
         pool.json
          desk standings --text --by wins,head_to_head pool1/*.json
",
        },
        Help {
            name: "sheet",
            line: "the sheet of match records",
            more: "desk sheet FILE…
The finished sheet as text.
    --html            to print, one page \
         that needs nothing else
    --csv             the points of all of them as one table \
         for a spreadsheet
    --clock +02:00    how far the clock in the hall is ahead; without \
         it universal time
Example:  desk sheet --html --clock +01:00 final.json > final.html
",
        },
        Help {
            name: "replay",
            line: "the state after match records, one JSON object a line",
            more: "desk replay FILE…
Folds each record and prints the state after its last entry: one JSON \
         object a line.
Example:  desk replay final.json
",
        },
        Help {
            name: "pack",
            line: "a match record in few bytes, to share as a code",
            more: "desk pack FILE
The record in as few bytes as fit a code; they go to the standard output \
         as they are.
Example:  desk pack final.json > final.pack
",
        },
        Help {
            name: "unpack",
            line: "the match record from a packed one",
            more: "desk unpack FILE
The match record from a packed one, the same to the byte.
Example:  \
         desk unpack final.pack > final.json
",
        },
        Help {
            name: "simulate",
            line: "invented matches, for tests and to look around",
            more: "desk simulate
Invented matches by the rules of play, one record a line; the same seed \
         gives the same match.
    --seed S        a number; without it 1
    --matches N     \
         how many, from consecutive seeds; without it 1
    --preset NAME   international, \
         school_senior, school_junior or tally
Example:  desk simulate --seed 7 > match.json
",
        },
    ],
    overview,
    help,
};

/// What holds for all of them.
const END: &str = "\
A FILE is a match record, a packed record, or a backup of many records, paper sheets and pools; - is
standard input. FILE#PART is one of a backup, as desk list names it: backup.json#paper-1. Its pools are
called backup.json#pool-1 and so on.
desk COMMAND --help says more of a command, with an example.
Exit status: 0 fine, 1 findings, 2 could not read.
";

fn overview() -> String {
    let lines = all()
        .into_iter()
        .map(|h| format!("desk {:10} {}\n", h.name, h.line));
    lines.chain([END.to_owned()]).collect()
}

fn help(name: &str) -> Option<&'static str> {
    all().iter().find(|h| h.name == name).map(|h| h.more)
}
