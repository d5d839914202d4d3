//! The words of the forms for a match: names, circumstances, rules, in Spanish.

use crate::setup::form::*;
use app::field::Field;
use rules::{Preset, Rules, Sets, SubstitutionPolicy, WarmUpStyle};

/// In Spanish.
pub static WORDS: SetupFormWords = SetupFormWords {
    all_can_wait: "Elige las reglas. Todo lo demás es opcional.",
    rules: "Reglas",
    teams: "Equipos",
    more: "Más: competición, gimnasio, reglas en detalle",
    rules_in_detail: "Reglas en detalle",
    rules_differ,
    standard_rules: "Usar las reglas normales",
    rules_not_usable: "Una de las reglas de abajo todavía no sirve.",
    open_match: "Abrir el partido",
    not_opened: "No se pudo abrir el partido. No se perdió nada. Prueba otra vez.",
    match_details: "Nombres, inicio, gimnasio, reglas",
    rules_clear_line_ups: "Si cambias las reglas ahora, confirma otra vez las formaciones.",
    keep_details: "Guardar cambios",
    preset,
    preset_is_for,
    rules_in_short,
    sets,
    one_limit: "Limita un set por minutos o por jugadas, no por ambos.",
    field,
    source,
    field_id,
    field_says,
    number_wanted,
    policy,
    liberos,
    on_court,
    warm_up_style,
    under_net,
    edition,
    day_empty: "Si está vacío: hoy, o mañana si esa hora ya pasó hace mucho.",
    starts,
};

fn preset(preset: Preset) -> &'static str {
    match preset {
        Preset::SchoolJunior => "Escolar, menores",
        Preset::SchoolSenior => "Escolar, mayores",
        Preset::International => "Internacional",
        Preset::Tally => "Solo puntos",
    }
}

fn preset_is_for(preset: Preset) -> String {
    let with = match preset.rules().liberos {
        0 => "sin líbero".to_owned(),
        1 => "un líbero".to_owned(),
        n => format!("{n} líberos"),
    };
    match preset {
        Preset::SchoolJunior => format!("Más corto, {with}"),
        Preset::SchoolSenior => format!("Duración completa, {with}"),
        Preset::International => "Las reglas oficiales".to_owned(),
        Preset::Tally => "Sin formaciones ni límites".to_owned(),
    }
}

fn rules_differ(of: Preset) -> String {
    format!(
        "No son las reglas normales de \u{201c}{}\u{201d}: alguien las cambió aquí o en el último partido.",
        preset(of)
    )
}

fn rules_in_short(rules: &Rules) -> String {
    let mut parts = vec![sets(rules.sets), format!("a {}", rules.set.target)];
    if matches!(rules.sets, Sets::BestOf(n) if n > 1) {
        parts.push(format!("último set a {}", rules.decider.to.target));
    }
    parts.push(match rules.time_outs.per_set {
        Some(1) => "1 tiempo muerto por set".to_owned(),
        Some(n) => format!("{n} tiempos muertos por set"),
        None => "tiempos muertos sin límite".to_owned(),
    });
    parts.push(match rules.substitutions.per_set {
        Some(1) => "1 sustitución por set".to_owned(),
        Some(n) => format!("{n} sustituciones por set"),
        None => "sustituciones sin límite".to_owned(),
    });
    parts.push(liberos(&rules.liberos.to_string()));
    if rules.players_on_court != 6 {
        parts.push(format!("{} jugadores en el campo", rules.players_on_court));
    }
    if !rules.line_ups {
        parts.push("sin formaciones".to_owned());
    }
    parts.push(match rules.warm_up.style {
        WarmUpStyle::Shared => format!("calentamiento de {} min juntos", rules.warm_up.minutes),
        WarmUpStyle::Separate => {
            format!("calentamiento de {} min por equipo", rules.warm_up.minutes)
        }
    });
    parts.join(", ") + "."
}

fn sets(sets: Sets) -> String {
    match sets {
        Sets::BestOf(1) => "Un set".to_owned(),
        Sets::BestOf(n) => format!("Al mejor de {n}"),
        Sets::Fixed(n) => format!("Se juegan los {n} sets"),
    }
}

fn field(field: Field) -> &'static str {
    match field {
        Field::Preset => "Reglas",
        Field::NameA => "Equipo A",
        Field::NameB => "Equipo B",
        Field::Time => "Inicio previsto",
        Field::Day => "Día",
        Field::Competition => "Competición",
        Field::Division => "Categoría",
        Field::Hall => "Gimnasio",
        Field::Court => "Campo",
        Field::MatchNumber => "Número de partido",
        Field::Edition => "Edición de las reglas",
        Field::Sets => "Sets",
        Field::Target => "Puntos para ganar un set",
        Field::Lead => "Ventaja para ganar",
        Field::Cap => "Tope: aquí basta cualquier ventaja (vacío: sin tope)",
        Field::SetCourts => "Cambio de campo dentro de un set, a los puntos (vacío: nunca)",
        Field::SetMinutes => "Minutos que dura un set (vacío: solo cuentan los puntos)",
        Field::SetRallies => "Jugadas que dura un set (vacío: solo cuentan los puntos)",
        Field::DeciderTarget => "Puntos para ganar el set decisivo",
        Field::DeciderLead => "Ventaja para ganar el set decisivo",
        Field::DeciderCap => "Tope en el set decisivo (vacío: sin tope)",
        Field::ChangeCourts => "Set decisivo: cambio de campo a los puntos (vacío: nunca)",
        Field::TimeOuts => "Tiempos muertos por set y equipo (vacío: sin límite)",
        Field::TimeOutsInMatch => "Tiempos muertos por partido y equipo (vacío: sin límite)",
        Field::TimeOutSeconds => "Segundos de un tiempo muerto",
        Field::Policy => "Sustituciones: quién por quién",
        Field::Substitutions => "Sustituciones por set y equipo (vacío: sin límite)",
        Field::Entries => "Veces en el campo por jugador y set (vacío: sin límite)",
        Field::Liberos => "Líberos",
        Field::OnCourt => "Jugadores en el campo",
        Field::ListMost => "Máximo de jugadores en la lista del equipo",
        Field::LowestNumber => "Número de camiseta más bajo",
        Field::HighestNumber => "Número de camiseta más alto",
        Field::WarmUp => "Calentamiento en la red",
        Field::WarmUpMinutes => "Minutos de calentamiento (por equipo o juntos)",
        Field::Interval => "Segundos entre sets",
        Field::SecondInterval => "Segundos entre los sets 2 y 3 (vacío: como los demás)",
        Field::ServiceSeconds => "Segundos para el saque",
        Field::UnderNet => "Pies y manos bajo la red",
    }
}

fn source(rule: Field) -> Option<&'static str> {
    Some(match rule {
        Field::Sets => {
            "Reglas oficiales: al mejor de 5 (6.3.1). Menos sets es costumbre en las \
             escuelas, sin fuente."
        }
        Field::Target | Field::Lead => "Reglas oficiales: 25 puntos, 2 de ventaja (6.2).",
        Field::Cap => "Reglas oficiales: sin tope (6.2).",
        Field::SetCourts => "Reglas oficiales: solo en el set decisivo (18.2.2).",
        Field::SetMinutes | Field::SetRallies => {
            "Reglas oficiales: un set acaba solo por puntos (6.2)."
        }
        Field::DeciderTarget | Field::DeciderLead => {
            "Reglas oficiales: 15 puntos, 2 de ventaja (6.3.2)."
        }
        Field::DeciderCap => "Reglas oficiales: sin tope (6.3.2).",
        Field::ChangeCourts => "Reglas oficiales: 8 (18.2.2).",
        Field::TimeOuts => "Reglas oficiales: 2 (15.1).",
        Field::TimeOutsInMatch => "Reglas oficiales: se cuentan en cada set (15.1).",
        Field::TimeOutSeconds => "Reglas oficiales: 30 (15.4.1).",
        Field::Policy => {
            "Reglas oficiales: un titular y un sustituto, una vez (15.6). Las otras son \
             costumbre, sin fuente."
        }
        Field::Substitutions => {
            "Reglas oficiales: 6 (15.1). Las escuelas suelen permitir 12: costumbre, sin \
             fuente."
        }
        Field::Entries => {
            "Reglas oficiales: se vincula la pareja (15.6). Contar entradas es costumbre, sin \
             fuente."
        }
        Field::Liberos => {
            "Reglas oficiales: hasta dos (19.1.1). Ninguno en categorías menores es \
             costumbre, sin fuente."
        }
        Field::OnCourt => {
            "Reglas oficiales: seis (7.3.1). Menos es costumbre en categorías menores, sin \
             fuente."
        }
        Field::ListMost => {
            "Reglas oficiales: 12. En competiciones oficiales de mayores 14, dos de ellos \
             líberos (4.1.1, 19.1.1)."
        }
        Field::LowestNumber | Field::HighestNumber => {
            "Reglas oficiales: del 1 al 20 (4.3.3). Los mayores pueden llegar al 99 (casos de \
             2024, 9.3)."
        }
        Field::WarmUp | Field::WarmUpMinutes => {
            "Reglas oficiales: 6 minutos juntos, 10 sin otro campo antes; 3 o 5 cada uno si \
             se pide (7.2)."
        }
        Field::Interval => "Reglas oficiales: tres minutos (18.1).",
        Field::SecondInterval => {
            "Reglas oficiales: diez minutos si el organizador los pide (18.1)."
        }
        Field::ServiceSeconds => "Reglas oficiales: 8 (12.4.4).",
        Field::UnderNet => {
            "Reglas oficiales: 11.2. La forma más estricta es costumbre en categorías \
             menores, sin fuente."
        }
        Field::Edition => {
            "Reglas oficiales de la federación internacional, por los años en que rigen."
        }
        _ => return None,
    })
}

fn field_id(field: Field) -> String {
    format!("{field:?}").to_lowercase()
}

fn field_says(wrong: Field, say: &str) -> String {
    format!("{}: {say}", field(wrong))
}

fn number_wanted(lowest: u16, highest: u16, may_be_empty: bool) -> String {
    if may_be_empty {
        format!("Escribe un número entero de {lowest} a {highest}, o déjalo vacío.")
    } else {
        format!("Escribe un número entero de {lowest} a {highest}.")
    }
}

fn policy(code: &str) -> String {
    policy_words(match code {
        "paired" => SubstitutionPolicy::Paired,
        "free" => SubstitutionPolicy::Free,
        _ => SubstitutionPolicy::SamePlace,
    })
    .to_owned()
}

fn policy_words(policy: SubstitutionPolicy) -> &'static str {
    match policy {
        SubstitutionPolicy::Paired => "Un titular y un sustituto, una vez",
        SubstitutionPolicy::SamePlace => "Siempre se vuelve a la misma posición",
        SubstitutionPolicy::Free => "Cualquiera por cualquiera",
    }
}

fn liberos(code: &str) -> String {
    match code {
        "0" => "sin líbero".to_owned(),
        "1" => "1 líbero".to_owned(),
        n => format!("{n} líberos"),
    }
}

fn on_court(code: &str) -> String {
    match code {
        "0" => "Sin formaciones".to_owned(),
        n => format!("{n} jugadores por equipo"),
    }
}

fn warm_up_style(code: &str) -> String {
    match code {
        "shared" => "Los dos equipos juntos",
        _ => "Un equipo después del otro",
    }
    .to_owned()
}

fn under_net(code: &str) -> String {
    match code {
        "junior" => "Menores: más estricto",
        _ => "Como en las reglas oficiales",
    }
    .to_owned()
}

fn edition(code: &str) -> String {
    match code {
        "2021" => "2021\u{2013}2024",
        _ => "2025\u{2013}2028",
    }
    .to_owned()
}

fn starts(tomorrow: bool, time: &str) -> String {
    let day = if tomorrow { "Mañana" } else { "Hoy" };
    format!("{day}, {time}.")
}
