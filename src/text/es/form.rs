//! What is wrong with a form that somebody keyed in as JSON, each with the way out, in Spanish.

use crate::form::*;
use crate::problem;
use reports::FormProblemKind;

/// In Spanish.
pub static WORDS: FormWords = FormWords { form_problem };

fn form_problem(kind: &FormProblemKind) -> String {
    use FormProblemKind as P;
    match kind {
        P::TooLong(bytes) => {
            format!(
                "El archivo tiene {bytes} bytes, mucho más que un formulario. Elige otro \
                 archivo."
            )
        }
        P::Damaged(line) => format!(
            "El archivo está dañado o cortado en la línea {line}, así que no se puede leer. \
             Corrige esa línea."
        ),
        P::OtherLog(name) => {
            format!("Este archivo es de otro tipo: `log` debe decir \"{name}\".")
        }
        P::NewerVersion(newer) => format!(
            "El archivo es de una versión más nueva ({newer}). Actualiza este programa y ábrelo \
             otra vez."
        ),
        P::NoVersion => "El archivo no dice su versión: debe ser 1.".to_owned(),
        P::Unreadable => "El formulario no se puede leer.".to_owned(),
        P::Missing => "Esto falta. Complétalo.".to_owned(),
        P::UnknownField => {
            "Este campo es desconocido y se omitió. Revisa cómo está escrito.".to_owned()
        }
        P::NotObject(fields) => {
            format!("Debe ser un objeto con: {}.", fields.join(", "))
        }
        P::NotList => "Debe ser una lista entre [ ].".to_owned(),
        P::TooManyItems { items, most } => {
            format!("{items} elementos son demasiados: como máximo {most}.")
        }
        P::NotText => "Debe ser un texto entre comillas, no vacío.".to_owned(),
        P::NotFlag => "Debe ser true o false.".to_owned(),
        P::NotWhole { least, most } => {
            format!("Debe ser un número entero de {least} a {most}.")
        }
        P::NotWord(words) => format!("Debe ser una de estas palabras: {}.", words.join(", ")),
        P::RulesUnreadable(why) => {
            let why = match why {
                Some(why) => problem::entry(why),
                None => "no son un objeto".to_owned(),
            };
            format!(
                "Estas reglas no se pueden leer ({why}). Nombra unas reglas predefinidas o \
                 corrígelas."
            )
        }
        P::RulesUnplayable => {
            "Con estas reglas no se puede jugar: revisa sets, puntos para ganar, topes y números \
             de jugadores."
                .to_owned()
        }
        P::NotTime => "Una hora se escribe con hora y minuto, por ejemplo 18:05.".to_owned(),
        P::NobodyNamed => {
            "La conducta incorrecta necesita la persona: \"who\": {\"player\": 7} o {\"staff\": \
             \"coach\"}."
                .to_owned()
        }
        P::NotOnePerson => {
            "Nombra a un jugador o a una persona del cuerpo técnico, no a ambos.".to_owned()
        }
        P::NoCriterion => "Nombra al menos un criterio.".to_owned(),
        P::TooManyTeams { teams, most } => {
            format!("{teams} equipos son demasiados para un grupo: como máximo {most}.")
        }
        P::NotMatchPoints => {
            "Debe nombrar los puntos por resultado, por ejemplo \"3-0\": [3,0].".to_owned()
        }
        P::NotTwoPoints => {
            "Deben ser dos números: los puntos del ganador y los del perdedor.".to_owned()
        }
        P::NotResult => {
            "Un resultado se nombra por sus sets, el número mayor primero, por ejemplo \"3-1\", o \
             \"default\"."
                .to_owned()
        }
        P::NotSet => {
            "Un set son dos números: los puntos del primer equipo y los del segundo.".to_owned()
        }
    }
}
