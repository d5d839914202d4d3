//! The words of the whole program: its screens by name, and how a match stands in a line, in Spanish.

use crate::common::*;
use crate::language_name;
use app::language::Language;
use app::summary::{Stage, Summary};
use app::theme::Theme;
use game::{isolated, Refusal, State};
use rules::{ByTeam, Team};

/// In Spanish.
pub static WORDS: CommonWords = CommonWords {
    back: "Atrás",
    close: "Cerrar",
    leave_it: "Cancelar",
    understood: "Entendido",
    opening: "Abriendo el partido …",
    loading: "Cargando …",
    part_not_loaded:
        "No se pudo cargar esta parte de Dutystand. Revisa la conexión y prueba otra vez. Tus \
         partidos están a salvo.",
    try_again: "Probar otra vez",
    not_here: "Este partido no está en este teléfono",
    not_here_more:
        "Puede que se borrara aquí o que se anotara en otro teléfono. Si tienes su archivo, \
         ábrelo desde la pantalla de inicio.",
    to_start: "Ir a la pantalla de inicio",
    lead: "Voleibol escolar y juvenil: en la silla, en la mesa, sin conexión.",
    new_match: "Partido nuevo",
    referee_a_match: "Arbitrar un partido",
    new_match_more: "Listas, sorteo, marcador y acta",
    quick_tally: "Marcador simple",
    quick_tally_more: "Solo puntos",
    continue_match: "Continuar",
    desk: "Escritorio",
    learn: "Aprender",
    learn_more: "Señales, decisiones, campo, tareas",
    signals_are: "Todas las señales",
    sheets: "Partidos en este teléfono",
    reading: "Leyendo …",
    no_sheets: "Todavía no hay ninguno. Cada partido que anotas se queda aquí hasta que lo borras.",
    open: "Abrir",
    export: "Exportar",
    delete: "Borrar",
    import: "Importar",
    import_choose: "Abrir un archivo",
    receive: "Escanear partido",
    hand_over: "Compartir",
    the_record: "El registro",
    this_phone: "Este teléfono",
    language_label: "Idioma",
    same_as_the_phone: "Como el teléfono",
    language_missing,
    theme_label: "Colores",
    before: "Antes del partido",
    log: "Registro del partido",
    whole_log: "Mostrar todo",
    sheet: "Acta",
    refused_title: "Las reglas no lo permiten",
    insist: "Anotar aun así",
    insist_why: "Tu motivo (va en el acta)",
    insist_needs_why: "Escribe antes un motivo breve. Va en el acta.",
    time_over: "fin del tiempo",
    team_name,
    teams,
    listed_teams,
    standing,
    listed_standing,
    theme,
    rule_of,
};

fn team_name(state: &State, team: Team) -> String {
    name_or_letter(state.heading().map_or("", |h| h.names[team].as_str()), team)
}

fn name_or_letter(name: &str, team: Team) -> String {
    if name.trim().is_empty() {
        format!("Equipo {team}")
    } else {
        isolated(name)
    }
}

fn teams(state: &State) -> String {
    if state.heading().is_none() {
        return UNREADABLE.into();
    }
    format!(
        "{} – {}",
        team_name(state, Team::A),
        team_name(state, Team::B)
    )
}

const UNREADABLE: &str = "Registro ilegible";

fn listed_teams(summary: &Summary) -> String {
    if !summary.is_readable {
        return UNREADABLE.into();
    }
    let name = |team| name_or_letter(summary.name(team), team);
    let teams = format!("{} – {}", name(Team::A), name(Team::B));
    if summary.is_practice {
        format!("{}: {teams}", crate::learn::practice_mark())
    } else {
        teams
    }
}

fn standing(state: &State) -> String {
    listed_standing(&Summary::of_state(state))
}

fn listed_standing(summary: &Summary) -> String {
    let (won, set) = (summary.sets_won().marked(), summary.set);
    match summary.stage {
        Stage::Preparation => "Sin empezar".into(),
        Stage::Playing => {
            let ByTeam { a, b } = summary.sets_won();
            format!("Set {set}: {}, en sets {a}:{b}", summary.score().marked())
        }
        Stage::BetweenSets => format!("{won} después del set {set}"),
        Stage::Finished => {
            let sets: Vec<String> = summary.sets().map(|score| score.to_string()).collect();
            format!("{won} ({})", sets.join(", "))
        }
    }
}

fn theme(theme: Theme) -> &'static str {
    match theme {
        Theme::System => same_as_the_phone(),
        Theme::Light => "Claro",
        Theme::Dark => "Oscuro",
        Theme::Sunlight => "Luz solar",
    }
}

fn rule_of(refusal: &Refusal) -> String {
    match refusal.rule() {
        "log" => "Cómo se lleva un registro".into(),
        "school" => "Un límite de esta competición".into(),
        rule => format!("Reglas Oficiales de Voleibol, {rule}"),
    }
}

fn language_missing(language: Language) -> String {
    format!(
        "No se pudo cargar: {}. Revisa la conexión y elígelo otra vez.",
        language_name(language)
    )
}
