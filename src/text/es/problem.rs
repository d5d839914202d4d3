//! What is wrong with a file, a packed record or its codes, in Spanish: the words behind *archivo:* or
//! *anotación n:*, without a capital and an end where they go on a sentence.

use crate::problem::*;
use record::{spaced, Broken, EntryProblem, Foreign, PackProblem, Problem, ProblemKind, Wanted};
use record::{MAX_ENTRIES, MAX_MATCHES};

/// In Spanish.
pub static WORDS: ProblemWords = ProblemWords {
    problem,
    kind,
    broken,
    entry,
    foreign,
    packed,
};

fn problem(problem: &Problem) -> String {
    let words = kind(&problem.kind);
    match problem.of_match {
        Some(place) => format!("partido {place}: {words}"),
        None => words,
    }
}

fn kind(kind: &ProblemKind) -> String {
    use ProblemKind as P;
    match kind {
        P::TooLong { bytes } => format!(
            "El archivo tiene {} MB; un partido tiene mucho menos de {MOST_MB}. Elige otro archivo.",
            bytes.div_ceil(MB)
        ),
        P::Foreign(foreign) => self::foreign(foreign),
        P::NoRecord { line } => format!(
            "Esto no es un registro de partido, o está dañado (línea {line}). Pide otra vez el \
             archivo."
        ),
        P::NoMatch => "El archivo no es un registro de partido. Elige otro.".to_owned(),
        P::OtherLog => "El archivo no es un registro de partido de esta app. Elige otro.".to_owned(),
        P::NewerVersion(newer) => format!(
            "El archivo es de una versión más nueva ({newer}) de este programa. Actualízalo y abre \
             otra vez el archivo."
        ),
        P::NoVersion => "El archivo no dice qué versión tiene. Pide otra vez el archivo.".to_owned(),
        P::NoEntries => "El registro no tiene lista de anotaciones. Pide otra vez el archivo.".to_owned(),
        P::CutOff => {
            "el archivo está cortado al final. Se leyeron todas las anotaciones anteriores al \
             corte. No se sabe cuántas faltan"
                .to_owned()
        }
        P::Damaged => "el archivo está dañado; se leyó lo que está entero".to_owned(),
        P::EndUnreadable => {
            "el archivo está dañado y no se puede leer hasta el final. Se leyó lo que está entero antes. No se \
             sabe cuántas anotaciones faltan"
                .to_owned()
        }
        P::MoreBehind => {
            "detrás del registro hay algo más en este archivo, quizá otro registro. Se omite".to_owned()
        }
        P::UnknownField(field) => format!("campo `{field}` desconocido, se omite"),
        P::UnreadLines(1) => {
            "1 línea estaba dañada, o era más nueva que el programa, cuando se escribió el \
             archivo. Se conserva como estaba"
                .to_owned()
        }
        P::UnreadLines(lines) => format!(
            "{lines} líneas estaban dañadas, o eran más nuevas que el programa, cuando se escribió \
             el archivo. Se conservan como estaban"
        ),
        P::NoId => "el registro no tiene id".to_owned(),
        P::IdChanged => "se cambió el id del registro, o el enlace que lleva al lado".to_owned(),
        P::TooManyEntries(entries) => {
            format!("{entries} anotaciones; solo se leyeron las primeras {MAX_ENTRIES}")
        }
        P::EntryDamaged => "la anotación está dañada".to_owned(),
        P::NoNumber => "la anotación no tiene número, o uno que ninguna puede tener".to_owned(),
        P::Renumbered(n) => format!("el número de la anotación se cambió a {n}"),
        P::NumberTwice(n) => format!("el número {n} está repetido, se omite el posterior"),
        P::Gap { first, last } => format!("faltan las anotaciones {first} a {last}"),
        P::Entry(problem) => entry(problem),
        P::UnknownEntryField(field) => {
            format!("campo `{field}` desconocido, se conserva sin entenderlo")
        }
        P::Broken(broken) => self::broken(broken),
        P::NoMatches => "La copia de seguridad no tiene lista de partidos. Pídela otra vez.".to_owned(),
        P::BackupEmpty => {
            "La copia de seguridad está dañada o cortada antes del primer partido. Pídela otra vez."
                .to_owned()
        }
        P::BackupDamaged => {
            "la copia de seguridad está dañada o cortada. Se leyó lo que está entero; falta el resto"
                .to_owned()
        }
        P::NewerBackup(newer) => format!(
            "La copia de seguridad es de una versión más nueva ({newer}) de este programa. \
             Actualízalo y ábrela otra vez."
        ),
        P::BackupNoVersion => "La copia de seguridad no dice qué versión tiene. Pídela otra vez.".to_owned(),
        P::TooManyMatches(matches) => {
            format!("{matches} partidos; solo se leyeron los primeros {MAX_MATCHES}")
        }
        P::OnDesk { field, count: 1 } => {
            format!("en `{field}` hay 1 que no se puede leer, se omite")
        }
        P::OnDesk { field, count } => {
            format!("en `{field}` hay {count} que no se pueden leer, se omiten")
        }
        P::Learner => "no se puede leer lo que se practicó, se omite".to_owned(),
        P::Logbook => "no se puede leer el cuaderno, se omite".to_owned(),
        P::MatchMissing => "no contiene ningún partido".to_owned(),
        P::Drawn => "no se puede leer una firma dibujada, se omite".to_owned(),
        P::More => "hay más errores que los de esta lista".to_owned(),
    }
}

fn broken(broken: &Broken) -> String {
    match broken {
        Broken::Link { .. } => {
            "la anotación o su enlace se cambió después de escribirse, o se quitó una anotación \
             anterior"
                .to_owned()
        }
        Broken::Seal(seal) => format!(
            "lo que está antes del sello no es lo que se selló: el sello dice {}, el registro da {}",
            spaced(&seal.code),
            spaced(&seal.found)
        ),
    }
}

fn entry(problem: &EntryProblem) -> String {
    use EntryProblem as P;
    match problem {
        P::Damaged => "la anotación está dañada".to_owned(),
        P::EntryNoObject => "la anotación no es un objeto".to_owned(),
        P::Missing(field) => format!("falta el campo `{field}`"),
        P::Not { field, wanted } => match wanted {
            Wanted::Text => format!("`{field}` no es un texto"),
            Wanted::Flag => format!("`{field}` no es ni true ni false"),
            Wanted::Whole(most) => format!("`{field}` no es un número entero de 0 a {most}"),
            Wanted::Time => format!("`{field}` no es un tiempo en milisegundos"),
            Wanted::List => format!("`{field}` no es una lista"),
            Wanted::Object => format!("`{field}` no es un objeto"),
        },
        P::UnknownWord {
            field,
            given,
            known,
        } => {
            let known = match &known[..] {
                [before @ .., last] if !before.is_empty() => {
                    format!("`{}` o `{last}`", before.join("`, `"))
                }
                _ => known.concat(),
            };
            format!("`{field}` dice `{given}`; puede decir {known}")
        }
        P::ItemNoObject(field) => format!("un elemento de `{field}` no es un objeto"),
        P::UnknownKind(kind) => format!("el tipo `{kind}` no se conoce"),
        P::UnknownCause(code) => format!("el motivo `{code}` no se conoce"),
        P::NobodyNamed => "`who` nombra a un `player` o a una persona de `staff`".to_owned(),
        P::UnknownPreset(code) => format!("reglas predefinidas `{code}` desconocidas"),
        P::PresetNoName => "las reglas predefinidas no son un nombre".to_owned(),
        P::UnknownRule(rule) => format!("regla `{rule}` desconocida"),
        P::OneNumber { rule, of: [a, b] } => format!("`{rule}` tiene un número, `{a}` o `{b}`"),
        P::InRules(problem) => format!("reglas: {}", entry(problem)),
    }
}

fn foreign(foreign: &Foreign) -> String {
    match foreign {
        Foreign::Empty => "Este archivo está vacío. Pídelo otra vez.",
        Foreign::Archive => {
            "Este archivo está comprimido. Descomprímelo y elige después el archivo que contiene."
        }
        Foreign::Picture => {
            "Esto es una imagen, no un registro. Pide el archivo del registro. Si la imagen \
             muestra códigos, escanéalos."
        }
        Foreign::Pdf => "Esto es un PDF, que sirve para imprimir. Pide el archivo del registro.",
        Foreign::Letters => {
            "Este archivo está dañado, o un editor lo guardó en otra codificación. Pídelo otra \
             vez, o guárdalo allí como UTF-8."
        }
        Foreign::Binary => "Este no es uno de nuestros archivos. Elige otro.",
        Foreign::Packed(why) => return packed(why),
    }
    .to_owned()
}

fn packed(why: &PackProblem) -> String {
    use PackProblem as P;
    match why {
        P::Gaps => {
            "A este registro le faltan anotaciones, así que no se puede empaquetar. Comparte el \
             archivo."
        }
        P::TooManyEntries(most) => {
            return format!(
                "El registro tiene más de {most} anotaciones y no se puede empaquetar. Comparte el \
                 archivo."
            )
        }
        P::TextTooLong => {
            "Un texto del registro es demasiado largo para empaquetarlo. Comparte el archivo."
        }
        P::TooLong => "Esto es demasiado largo para un registro empaquetado. Pide el archivo.",
        P::Empty => "No hay nada que desempaquetar.",
        P::Newer => {
            "Una versión más nueva de la app empaquetó este registro. Actualiza la app aquí, o \
             pide el archivo."
        }
        P::Older => {
            "Una versión más antigua de la app empaquetó este registro en una forma que ya no se \
             lee. Actualiza la app allí y muestra otra vez los códigos, o pide el archivo."
        }
        P::Damaged => "El registro empaquetado está dañado. Compártelo otra vez.",
        P::UnknownEntries => {
            "El registro tiene anotaciones que esta versión de la app no conoce. Actualiza la app \
             aquí, o pide el archivo."
        }
        P::TooManyCodes(codes) => {
            return format!("El registro necesitaría {codes} códigos. Comparte mejor el archivo.")
        }
        P::NoDigits => "Aquí solo se hace un código con cifras.",
        P::TooManyDigits => "Esto es demasiado largo para un código.",
        P::ForeignCode => {
            "Este código no es de un registro de partido. Usa el código de la pantalla del otro \
             teléfono."
        }
        P::NewerCode => "Este código es de una versión más nueva. Actualiza, o pide el archivo.",
        P::MixedCodes => {
            "Estos códigos son de registros distintos. Pon cada registro en su propio archivo."
        }
        P::CodesOfNotes => {
            "Estos códigos llevan las notas de un observador. Escanéalos en el teléfono del \
             árbitro."
        }
        P::NotesUnreadable => {
            "Estas notas están dañadas, o son de una versión más nueva. Escanea otra vez el \
             código, o actualiza."
        }
        P::MissingCodes(missing) => {
            let missing: Vec<String> = missing.iter().map(usize::to_string).collect();
            return format!(
                "Faltan códigos: {}. Pon en el archivo las cifras de todos, un código por línea.",
                missing.join(", ")
            );
        }
    }
    .to_owned()
}
