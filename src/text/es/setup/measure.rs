//! The words of what is measured: ball and net, in Spanish.

use crate::setup::measure::*;
use rules::{Height, Judged, NetFault, Pressure, Unit, SIDE_MORE};

/// In Spanish.
pub static WORDS: MeasureWords = MeasureWords {
    gauge: "Lo que marca el manómetro",
    gauge_unit: "Unidad del manómetro",
    gauge_form: "Escribe el número como lo marca el manómetro, por ejemplo 0.31 o 4.4.",
    no_gauge: "¿Sin manómetro?",
    without_gauge: [
        "Aprieta el balón con los dos pulgares. Un buen balón cede un poco y recupera su forma \
         enseguida, sin hundirse ni arrugarse.",
        "Deja que los dos capitanes o entrenadores lo prueben, y también el balón de reserva. Usa \
         el que acuerden.",
        "Escribe \u{201c}sin manómetro\u{201d} en la nota de abajo. Es práctica común; ninguna \
         regla lo dice.",
    ],
    limits,
    pressure,
    judged,
    meant,
    ball_note,
    net_height: "Altura requerida",
    net_ages:
        "Las reglas oficiales solo tienen estas dos alturas. Las categorías por edad tienen las \
         alturas de tu competición: pregunta y escribe la tuya.",
    net_own: "Por edad",
    net_own_height: "Altura en tu competición, en metros",
    net_measured: "Medido, en metros (opcional)",
    net_places: ["Centro", "Lateral izquierda", "Lateral derecha"],
    net_form: "Escribe una altura, por ejemplo 2.24 o 224.",
    net_right: "La red está bien.",
    net_class,
    net_fault,
    net_faults,
    net_note,
};

fn limits(unit: Unit) -> String {
    let (low, high) = unit.limits();
    format!("{} a {}", low.number(), high.number())
}

fn pressure(pressure: Pressure) -> String {
    format!("{} {}", pressure.number(), pressure.unit.symbol())
}

fn judged(judged: Judged) -> &'static str {
    match judged {
        Judged::Within => "Dentro de los límites.",
        Judged::Below => "Demasiado blando: ínflalo.",
        Judged::Above => "Demasiado duro: saca un poco de aire.",
    }
}

fn meant(unit: Unit) -> String {
    format!(
        "En {} este número sería correcto. Mira otra vez el manómetro.",
        unit.symbol()
    )
}

fn ball_note(found: Pressure) -> String {
    let words = match found.judge() {
        Judged::Within => "",
        Judged::Below => ", demasiado blando",
        Judged::Above => ", demasiado duro",
    };
    format!("{}{words}", pressure(found))
}

fn net_class(name: &str, height: Height) -> String {
    format!("{name}: {} m", height.metres())
}

fn net_fault(fault: NetFault) -> String {
    let cm = |mm: u16| match mm % 10 {
        0 => format!("{} cm", mm / 10),
        rest => format!("{}.{rest} cm", mm / 10),
    };
    match fault {
        NetFault::MiddleLow(by) => format!("{} demasiado baja en el centro", cm(by)),
        NetFault::MiddleHigh(by) => format!("{} demasiado alta en el centro", cm(by)),
        NetFault::SidesDiffer(by) => format!("los lados difieren en {}", cm(by)),
        NetFault::SideHigh(by) => {
            format!(
                "un lado está {} por encima de la altura requerida (se permiten {})",
                cm(by),
                cm(SIDE_MORE)
            )
        }
        NetFault::SideLow(by) => format!("un lado está {} demasiado bajo", cm(by)),
    }
}

fn net_faults(faults: &[NetFault]) -> String {
    faults
        .iter()
        .map(|f| net_fault(*f))
        .collect::<Vec<_>>()
        .join("; ")
}

fn net_note(wanted: Height, measured: [Option<Height>; 3], faults: &[NetFault]) -> String {
    let shown: Vec<String> = net_places()
        .iter()
        .zip(measured)
        .filter_map(|(place, height)| {
            Some(format!("{} {}", place.to_lowercase(), height?.metres()))
        })
        .collect();
    let mut words = format!("{} m", wanted.metres());
    if !shown.is_empty() {
        words.push_str(&format!(", medido: {}", shown.join(", ")));
    }
    if !faults.is_empty() {
        words.push_str(&format!("; {}", net_faults(faults)));
    }
    words
}
