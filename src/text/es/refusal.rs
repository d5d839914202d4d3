//! Every refusal in words: what is wrong, and what would be legal, in Spanish.
//!
//! One table for one topic, read a word at a time beside it: parted, it would only be
//! harder to compare with the other language.

use super::entry::capital;
use crate::refusal::*;
use crate::Teams;
use game::{Barred, InSet, Level, OutFor, Refusal, Who, RECOVERY_SECONDS};
use rules::{Invalid, Shirt, Team};

/// In Spanish.
pub static WORDS: RefusalWords = RefusalWords { refusal };

fn refusal(refused: &Refusal, teams: Teams) -> String {
    let name = |team: Team| teams.name(team);
    use Refusal as R;
    match refused {
        R::NoMatch => "Aún no hay ningún partido abierto. La primera anotación lo abre.".into(),
        R::MatchOpen => {
            "El partido ya está abierto. Empieza un registro nuevo para otro partido.".into()
        }
        R::BadRules(why) => bad_rules(*why).into(),
        R::MatchOver => {
            "El partido ha acabado. Aún se puede añadir una observación o una firma.".into()
        }
        R::Suspended => "El juego está interrumpido. Reanúdalo primero.".into(),
        R::NotSuspended => "El juego no está interrumpido: no hay nada que reanudar.".into(),
        R::NoSetRunning {
            asked: InSet::Recovery,
        } => "Faltan las formaciones: no hay nadie en el campo. El tiempo de recuperación es para \
             un jugador en el campo."
            .into(),
        R::NoSetRunning {
            asked: InSet::Rally | InSet::TimeOut | InSet::ChangeOfCourts,
        } => "No hay ningún set en juego. Empieza primero el set.".into(),
        R::SetRunning => "Hay un set en juego. Puedes hacer esto antes del próximo.".into(),
        R::NobodyOnCourt => {
            "Los jugadores entran y salen solo con las dos formaciones confirmadas.".into()
        }
        R::LiberoBeforeLineUps => {
            "El líbero entra solo con las dos formaciones confirmadas y comprobadas.".into()
        }
        R::StrikeFirst => {
            "La anotación que abrió el partido no se puede deshacer. Borra el partido.".into()
        }
        R::StrikeLater { entry } => format!(
            "La anotación {entry} no es anterior. Solo se pueden deshacer anotaciones anteriores."
        ),
        R::AlreadyStruck { entry } => {
            format!("La anotación {entry} ya está deshecha. Para recuperarla, deshaz ese paso.")
        }
        R::Sealed { entry } => format!(
            "El registro está sellado por la anotación {entry}. Reábrelo primero. La reapertura \
             va al acta."
        ),
        R::NotSealed => "El registro no está sellado: no hay nada que reabrir.".into(),
        R::SealStands { entry } => format!(
            "La anotación {entry} no se puede deshacer: los sellos y las reaperturas quedan en el \
             acta. Reabre el registro o vuelve a sellarlo."
        ),
        R::NoSuchRally { entry } => format!(
            "La anotación {entry} no es una jugada que cuente. Elige una jugada de la lista."
        ),
        R::NotLastRally { entry } => format!(
            "La anotación {entry} no es la última jugada, o después hubo algo más que una \
             solicitud. Solo se puede repetir la última jugada. Deshaz primero lo que vino después."
        ),
        R::BeforeReplay { replay } => format!(
            "Esta anotación quedaría entre una jugada y su repetición, la anotación {replay}. \
             Deshaz primero la anotación {replay}."
        ),
        R::NoQuestion { entry } => format!("La anotación {entry} no hace ninguna pregunta."),
        R::NoSuchChoice { choices } => {
            format!(
                "Responde con una de estas opciones: {}.",
                choices.join(", ")
            )
        }

        R::RulesSettled => {
            "El partido ya se juega con sus reglas, o un set habría acabado con las nuevas. \
             Empieza un registro nuevo para otras reglas."
                .into()
        }
        R::ListClosed => {
            "El partido ha empezado: las listas de equipo están cerradas. Escribe el cambio como \
             observación."
                .into()
        }
        R::TooManyPlayers { players, most } => {
            format!("{players} jugadores son demasiados: en la lista caben {most}.")
        }
        R::NumberTwice { number } => format!(
            "El número {number} está dos veces en la lista. Da a cada jugador un número distinto."
        ),
        R::NumberOutOfRange {
            number,
            lowest,
            highest,
        } => format!(
            "El número {number} no se permite aquí. Los números van del {lowest} al {highest}."
        ),
        R::TwoCaptains { first, second } => {
            format!("El {first} y el {second} están marcados como capitán. Un equipo tiene uno.")
        }
        R::TooManyLiberos { most: 0, .. } => {
            "Esta competición se juega sin líbero. Quita la marca de la lista.".into()
        }
        R::TooManyLiberos { liberos, most } => {
            format!("{liberos} líberos son demasiados: esta competición permite {most}.")
        }
        R::TossInSet => "Hay un set en juego. El sorteo fue antes.".into(),
        R::TossNotDue { set } => format!(
            "No hay sorteo antes del set {set}. Saca primero el equipo que no sacó primero en el \
             último set."
        ),
        R::TossMissing { set } => {
            format!("Falta el sorteo para el set {set}. Anótalo primero.")
        }
        R::NoTeamList { team } => format!(
            "Falta la lista de {}. Introdúcela antes de la formación.",
            name(*team)
        ),
        R::LineUpGiven { team } => format!(
            "La formación de {} está confirmada. Un cambio ahora es una sustitución.",
            name(*team)
        ),
        R::LineUpPlayed { team } => format!(
            "La formación de {} está confirmada y el set está en juego. Un cambio ahora es una \
             sustitución.",
            name(*team)
        ),
        R::LineUpMissing { team } => {
            format!(
                "Falta la formación de {}. Pídela al entrenador.",
                name(*team)
            )
        }
        R::SeveralMissing { line_ups, toss_for } => {
            let line_ups = match line_ups[..] {
                [team] => refusal(&R::LineUpMissing { team }, teams),
                _ => "Faltan las formaciones de los dos equipos. Pídelas a los entrenadores."
                    .to_owned(),
            };
            let toss = toss_for.map(|set| refusal(&R::TossMissing { set }, teams));
            [Some(line_ups), toss]
                .into_iter()
                .flatten()
                .collect::<Vec<_>>()
                .join(" ")
        }
        R::LineUpSize { numbers, needed } => {
            format!("Una formación tiene {needed} números. Esta tiene {numbers}.")
        }
        R::NotListed { team, number } => format!(
            "El número {number} no está en la lista de {}. Solo puede jugar quien está en la \
             lista.",
            name(*team)
        ),
        R::UnlistedSubstitute { team, number } => format!(
            "El número {number} no está en la lista de {} y no puede entrar. Solo puede jugar \
             quien está en la lista.",
            name(*team)
        ),
        R::TwiceInLineUp { number } => format!(
            "El número {number} está dos veces en esta formación. Cada posición necesita un \
             jugador distinto."
        ),
        R::LiberoInLineUp { number } => format!(
            "El número {number} es líbero y no puede empezar. Elige un jugador que no sea líbero. \
             El líbero entra después."
        ),
        R::PlayerBarred { number, why } => barred(*number, *why),

        R::ServingTeamStandsFree { serving } => format!(
            "Sacaba {}, y el equipo que saca puede ponerse donde quiera en su campo. Elige otro \
             motivo. El punto se mantiene.",
            name(*serving)
        ),

        R::PlayedHere => {
            "Este registro ya ha empezado. Los sets y el marcador solo se pueden introducir como \
             primer paso."
                .into()
        }
        R::NothingToTakeOver => {
            "Aún no se ha jugado nada: no hay marcador que introducir. Empieza el partido.".into()
        }
        R::SetNotOver { set, score } => {
            format!(
                "El set {set} no puede haber acabado con {}.",
                score.marked()
            )
        }
        R::SetLevel { set, score } => format!(
            "El set {set} no puede haber acabado en empate, {}. Introdúcelo como set en juego.",
            score.marked()
        ),
        R::SetOver { set, score } => format!(
            "Con {} el set {set} ha acabado. Introdúcelo con los sets acabados.",
            score.marked()
        ),
        R::TossDecides { set } => {
            format!("Un sorteo decide quién saca primero en el set {set}. Introduce el sorteo.")
        }
        R::FoundTooLate => {
            "El set ha empezado. Una diferencia con la formación es ahora una falta detectada \
             tarde."
                .into()
        }
        R::NotInLineUp { number } => format!(
            "El número {number} no está en la formación. Elige al jugador que debería estar en el \
             campo."
        ),
        R::ScoreFollowsPoints => {
            "El saque y la rotación salen de los puntos. Deshaz la jugada equivocada y anota la \
             correcta."
                .into()
        }
        R::ScoreStands { score } => format!("El marcador ya es {}.", score.marked()),
        R::ScoreTooHigh { most } => format!("Un set tiene como máximo {most} puntos."),
        R::NotByTime => {
            "Los sets no se juegan por tiempo en este partido. Un set acaba por puntos.".into()
        }
        R::NoTimeOutLeftInMatch { team, most } => no_time_out_left(&name(*team), *most, "partido"),
        R::NoReplacementNow { team } => format!(
            "Ningún líbero de {} ha entrado ni salido desde la última jugada. Anota primero el \
             reemplazo.",
            name(*team)
        ),
        R::NoSuchMoment { asked, nearest } => never_stood(&asked.marked(), &nearest.marked()),

        R::NoTimeOutLeft { team, most } => no_time_out_left(&name(*team), *most, "set"),
        R::AfterReplay => {
            "Primero se repite la última jugada. No se permite ninguna solicitud normal hasta \
             completar una jugada. Es posible una sustitución obligatoria."
                .into()
        }
        R::RequestBarred { team } => format!(
            "Se rechazó una solicitud de {} con una amonestación por demora. Puede volver a pedir \
             después de la próxima jugada completa.",
            name(*team)
        ),
        R::SecondRequest { team } => format!(
            "{} ya ha hecho una solicitud en esta interrupción. La próxima es posible después de \
             una jugada completa.",
            name(*team)
        ),
        R::NoChange => "Di quién sale y quién entra.".into(),
        R::NotOnCourt { number, .. } => {
            format!("El número {number} no está en el campo. Elige a alguien que esté.")
        }
        R::OnCourt { number, .. } => {
            format!("El número {number} ya está en el campo. Elige a alguien del banco.")
        }
        R::NamedTwice { number } => format!(
            "El número {number} está dos veces en esta solicitud. Cada jugador cambia una vez."
        ),
        R::LiberoNotSubstituted { number } | R::LiberoNoSubstitute { number } => format!(
            "El número {number} es líbero y no participa en sustituciones. Usa un reemplazo del \
             líbero."
        ),
        R::NoSubstitutionLeft { used, wanted, most } => {
            let more = match wanted {
                1 => "no se puede conceder 1 más".to_owned(),
                wanted => format!("no se pueden conceder {wanted} más"),
            };
            format!("Sustituciones usadas: {used} de {most}. En este set {more}.")
        }
        R::PlaceClosed { number } => format!(
            "El titular de la posición del número {number} ha salido y ha vuelto. Ahí no hay más \
             sustituciones posibles en este set."
        ),
        R::ClosedByExceptional { number } => format!(
            "El número {number} entró por una sustitución excepcional. Ahí no es posible una \
             sustitución normal en este set."
        ),
        R::OnlyStarterReturns { out, starter } => {
            format!("Por el número {out} solo puede volver el número {starter}.")
        }
        R::OtherPlace {
            number,
            now_held_by,
        } => format!(
            "El número {number} es de otra posición de esta formación. Solo puede entrar por el \
             número {now_held_by}."
        ),
        R::SubstituteUsed { number } => format!(
            "El número {number} ya ha entrado una vez en este set. Elige a alguien que no haya \
             entrado."
        ),
        R::EntriesUsed { number, most } => {
            let times = match most {
                1 => "1 vez".to_owned(),
                most => format!("{most} veces"),
            };
            format!(
                "El número {number} ha estado {times} en el campo en este set. No se permite más."
            )
        }
        R::LegalChangeExists { out, into } => format!(
            "Hay sustituto normal para el número {out}: {}. Una sustitución excepcional solo es \
             posible cuando no lo hay.",
            numbers(into)
        ),
        R::NotSentOff { number } => format!(
            "El número {number} no tiene expulsión ni descalificación. Elige otro motivo o anota \
             primero la sanción."
        ),
        R::PartlyIllegal { legal, because } => format!(
            "{} Puedes conceder: {}.",
            refusal(because, teams),
            crate::score_sheet::changes(legal)
        ),

        R::NotALibero { number } => format!("El número {number} no es líbero de este equipo."),
        R::LiberoOnCourt { number } => {
            format!("El líbero {number} está en el campo. Solo juega un líbero a la vez.")
        }
        R::BackRowOnly { number } => format!(
            "El número {number} es delantero. El líbero solo entra en {}.",
            back_row(teams.on_court)
        ),
        R::LeavesBySubstitution { number } => format!(
            "El número {number} no puede estar en el campo y sale por una sustitución. Un líbero \
             no puede ocupar esa posición."
        ),
        R::LiberoServes { number } => format!(
            "El número {number} es líbero y no puede sacar. El jugador que saca se queda en el \
             campo."
        ),
        R::RallyBetween => {
            "Entre dos reemplazos del líbero debe haber una jugada completa. Espera a la próxima."
                .into()
        }
        R::NotForLibero { libero, replaced } => format!(
            "Por el líbero {libero} solo entra el número {replaced} u otro líbero del equipo."
        ),
        R::RegularReturnsFirst { libero, replaced } => format!(
            "Al líbero {libero} solo lo declararon no apto, así que vuelve primero el número \
             {replaced}. El nuevo líbero entra después de la próxima jugada completa."
        ),
        R::ReplacedPlayer { number } => {
            format!("El líbero está en lugar del número {number}, que no puede pasar a ser líbero.")
        }
        R::OtherLibero { number } => {
            format!("El líbero {number} aún puede jugar: no se nombra un nuevo líbero.")
        }
        R::AlreadyLibero { number } => format!("El número {number} ya es líbero."),

        R::TeamWarned { team } => format!(
            "{} ya ha tenido su única amonestación. El próximo paso es un castigo.",
            name(*team)
        ),
        R::NotHeavier {
            who,
            had: Level::Disqualification,
        } => format!(
            "{}: ya tiene una descalificación. No hay sanción más grave. Escribe lo que pasó como \
             observación.",
            person(who)
        ),
        R::NotHeavier { who, had } => format!(
            "{}: ya tiene {}. La próxima sanción para la misma persona es más grave.",
            person(who),
            level(*had)
        ),

        R::NoSetForGameCaptain => {
            "Un capitán en juego habla durante el set. Introduce primero las dos formaciones."
                .into()
        }
        R::CaptainSpeaks { captain } => format!(
            "El capitán {captain} está en el campo y habla por el equipo. No se nombra a nadie más."
        ),
        R::LeavesCourt { number } => format!(
            "El número {number} tiene que salir del campo y no puede hablar por el equipo. Elige \
             un jugador que se quede."
        ),
        R::NotGameCaptain { number, speaker } => format!(
            "El número {number} no habla por el equipo. Solo el capitán en juego, el número \
             {speaker}, anuncia una protesta."
        ),
        R::NotAnnounced { team } => format!(
            "{} no anunció ninguna protesta en su momento: no se escribe ninguna en el acta.",
            name(*team)
        ),
        R::NoSuchProtest { entry } => {
            format!("La anotación {entry} no anuncia ninguna protesta que siga en pie.")
        }
        R::ProtestWritten { entry } => format!(
            "Esta protesta ya está escrita, en la anotación {entry}. Deshaz esa anotación para \
             escribirla de nuevo."
        ),
        R::ProtestAfterMatch => {
            "Una protesta se escribe en el acta después del partido. Hasta entonces basta con \
             anunciarla."
                .into()
        }

        R::ScoreNeverStood { asked, nearest, .. } => {
            never_stood(&asked.marked(), &nearest.marked())
        }
        R::SetNotPlayed { set, .. } => {
            format!("El set {set} aún no se ha jugado. Elige un marcador de un set que ya se jugó.")
        }
        R::EarlierSet { set, now, .. } => format!(
            "El set {set} está cerrado: esto solo se corrige hasta que empieza el set siguiente. \
             Elige un marcador del set {now}."
        ),
        R::NothingPlayed { .. } => {
            "Aún no se ha jugado ningún set: no hay nada que corregir.".into()
        }
        R::RallyBeganBefore { asked, before } => format!(
            "Nadie ha sacado desde {asked}. La jugada que acaba de terminar empezó con {before}. \
             Elige {before}, para que la falta cueste un punto."
        ),
        R::NoRallyYet => {
            "En este set no se ha completado ninguna jugada, así que ninguna falta se detectó \
             después de una."
                .into()
        }
        R::DidNotServe { team } => format!(
            "{} no sacaba entonces, así que no cometió falta de rotación. Elige el equipo que \
             sacó o un marcador anterior.",
            name(*team)
        ),
        R::NotByPlay { set } => format!(
            "El set {set} no se decidió jugando en este registro: no hay puntos que corregir."
        ),

        R::RecoveryUsed { number } => format!(
            "El número {number} ya ha usado los {} minutos en este partido. Sin sustituto, el \
             equipo está incompleto.",
            RECOVERY_SECONDS / 60
        ),
        R::SomebodyCanComeIn { number, into } => {
            format!(
                "Hay quien puede entrar por el número {number}: {}.",
                numbers(into)
            )
        }
        R::OverFourHours => {
            "Las interrupciones duran más de cuatro horas en total: todo el partido se juega otra \
             vez. Cierra este registro con una observación y empieza uno nuevo."
                .into()
        }
        R::NotDecider => "El cambio de campo dentro de un set es solo en el set decisivo.".into(),
        R::CourtsChanged => "El cambio de campo de este set ya está hecho.".into(),
        R::CourtsNotDue { at } => {
            format!("El cambio de campo toca cuando el primer equipo llega a {at} puntos.")
        }
    }
}

fn no_time_out_left(name: &str, most: u8, within: &str) -> String {
    let all = match most {
        1 => "su tiempo muerto".to_owned(),
        most => format!("sus {most} tiempos muertos"),
    };
    format!(
        "{name} ya ha usado {all} de este {within}. Rechaza la solicitud y anótala como \
         improcedente."
    )
}

fn never_stood(asked: &str, nearest: &str) -> String {
    format!("El marcador nunca fue {asked} en este set. El más cercano es {nearest}.")
}

/// The places of the back row: with fewer than six on court place 6 falls away first, then 5 (our choice, no
/// source).
fn back_row(players_on_court: u8) -> &'static str {
    match players_on_court {
        4 => "la posición 1",
        5 => "las posiciones 1 y 5",
        _ => "las posiciones 1, 6 y 5",
    }
}

fn bad_rules(why: Invalid) -> &'static str {
    match why {
        Invalid::Sets => {
            "Un partido se juega al mejor de un número impar de sets, o a un número fijo de sets, \
             hasta 9."
        }
        Invalid::Target => {
            "Un set necesita una meta y una ventaja de al menos 1. El tope no puede ser menor que \
             la meta."
        }
        Invalid::PlayersOnCourt => "En el campo hay de cuatro a seis jugadores por equipo.",
        Invalid::SetLimit => "Un set que acaba por tiempo o por jugadas necesita al menos 1.",
        Invalid::Liberos => "Un equipo no tiene líbero, tiene uno o tiene dos.",
        Invalid::Roster => {
            "En la lista del equipo deben caber todos los jugadores del campo. Su número más bajo \
             no puede ser mayor que el más alto."
        }
    }
}

fn barred(number: Shirt, why: Barred) -> String {
    match why {
        Barred::Expelled => format!(
            "El número {number} tiene una expulsión y puede volver a jugar en el próximo set."
        ),
        Barred::Out(OutFor::Disqualified) => format!(
            "El número {number} tiene una descalificación y no puede volver a jugar en este \
             partido."
        ),
        Barred::Out(OutFor::Exceptional) => format!(
            "El número {number} salió por una sustitución excepcional y no puede volver a jugar \
             en este partido."
        ),
        Barred::Out(OutFor::Redesignated) => format!(
            "El número {number} dejó su puesto a un nuevo líbero y no puede volver a jugar en \
             este partido."
        ),
    }
}

fn person(who: &Who) -> String {
    capital(&super::entry::person(who))
}

/// A level of misconduct, in words that fit behind *has had*.
pub(super) fn level(level: Level) -> &'static str {
    match level {
        Level::Warning => "una amonestación",
        Level::Penalty => "un castigo",
        Level::Expulsion => "una expulsión",
        Level::Disqualification => "una descalificación",
    }
}

fn numbers(list: &[Shirt]) -> String {
    list.iter()
        .map(ToString::to_string)
        .collect::<Vec<_>>()
        .join(", ")
}
