//! Where somebody can be hurt, in Spanish.

use crate::learn::*;
use crate::setup::{do_not_start, look_at, not_yours_alone};
use crate::{care_head, care_no_diagnosis, care_not_replaced, care_stop};
use rules::{Rules, Step};

/// In Spanish.
pub static WORDS: CareWords = CareWords {
    care_name,
    care_lines,
};

fn care_name(care: Care) -> &'static str {
    match care {
        Care::Floor => "Suelo",
        Care::Posts => "Red y postes",
        Care::Jewellery => "Pelo y joyas",
        Care::Head => "Golpe en la cabeza",
        Care::Blood => "Sangre",
        Care::Heat => "Calor y frío",
        Care::Thunder => "Tormenta",
        Care::Lights => "Se va la luz",
    }
}

fn care_lines(care: Care, rules: &Rules) -> Vec<String> {
    let mut lines: Vec<String> = match care {
        Care::Floor => look_at(Step::Floor, rules),
        Care::Posts => look_at(Step::Net, rules),
        Care::Jewellery | Care::Head | Care::Blood | Care::Heat | Care::Thunder | Care::Lights => {
            Vec::new()
        }
    };
    let more: &[&str] = match care {
        // 1.2.1, 5.1.2.2
        Care::Floor => &[
            "Una mancha mojada durante el juego: detenlo, deja que los jugadores la sequen y \
             sigue.",
            do_not_start(),
            not_yours_alone(),
        ],
        Care::Posts => &[
            "Nadie se cuelga de la red ni se apoya en un poste. Solo los adultos mueven postes \
             pesados.",
            do_not_start(),
            not_yours_alone(),
        ],
        // 4.5.1; long hair and nails: common practice, no source
        Care::Jewellery => &[
            "No se puede llevar nada que pueda herir a alguien (regla 4.5).",
            "Anillos, cadenas y relojes se quitan. Lo que no se puede quitar se cubre con cinta.",
            "El pelo largo se recoge con algo blando.",
            "Quien juega con gafas lo hace bajo su propio riesgo. No se permiten yesos rígidos.",
            "¿Algo que se lleva por religión o por salud? Pregunta con amabilidad al organizador, \
             antes del partido.",
        ],
        // 17.1.1 and public guidance
        Care::Head => &[
            care_stop(),
            care_no_diagnosis(),
            care_head(),
            "Alguien acompaña al jugador todo el tiempo.",
            "No hace falta tener mal aspecto. Puede venir más tarde: un adulto en casa tiene que \
             saberlo.",
            care_not_replaced(),
        ],
        // common practice of many schools, no rule of the international text
        Care::Blood => &[
            care_stop(),
            "Un jugador que sangra sale del campo. El adulto responsable dice cuándo vuelve.",
            "Solo personas formadas y con guantes tocan la sangre. Suelo y balón se limpian antes \
             de jugar.",
            "Una camiseta con sangre se cambia. Si el número es nuevo, díselo al anotador.",
            care_not_replaced(),
        ],
        // 1.5; the rest is usual public guidance
        Care::Heat => &[
            "No debe hacer menos de 10 \u{b0}C (regla 1.5). Las reglas no dan un máximo.",
            "Con calor, deja que los jugadores beban en cada pausa. Pide más pausas al \
             organizador.",
            "Alguien está mareado, se siente mal o está confundido: detén el juego. Llama \
             enseguida al adulto responsable.",
            care_not_replaced(),
        ],
        // usual public guidance; 17.3
        Care::Thunder => &[
            "Al aire libre: si oyes truenos o ves rayos, detén el juego. Todos entran en un \
             edificio.",
            "No debajo de árboles, no junto a postes, no en carpas.",
            "Un adulto responsable decide cuándo es seguro volver a jugar, según las reglas del \
             lugar.",
            "El árbitro apunta el marcador, quién saca y ambas formaciones.",
            care_not_replaced(),
        ],
        // 1.6, 17.3
        Care::Lights => &[
            "Detén el juego. Todos se quedan quietos hasta que haya luz.",
            "Una jugada que estaba en marcha se repite.",
            "Apunta el marcador, quién saca y ambas formaciones.",
            "El organizador decide con el primer árbitro cómo se sigue (regla 17.3).",
            not_yours_alone(),
        ],
    };
    lines.extend(more.iter().map(|line| (*line).to_owned()));
    lines
}
