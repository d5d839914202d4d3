//! What the commands of the command line say of themselves: tables of their options, in Spanish.

use crate::command_help::*;

/// In Spanish.
pub static WORDS: CommandHelpWords = CommandHelpWords {
    all: [
        Help {
            name: "list",
            line: "todos los registros y actas en papel: resultado, sello, puntos que revisar",
            more: "desk list FILE…
Una línea por registro de partido o acta en papel: equipos, resultado, estado del sello,
número de puntos que revisar.
    --csv             como tabla para hoja de cálculo
    --clock +02:00    cuánto va adelantada la hora del gimnasio; sin ella, la hora universal
    --json            como un objeto JSON
Ejemplo:  desk list saturday/*.json
",
        },
        Help {
            name: "audit",
            line: "qué revisar en los registros de partido, un punto por línea",
            more: "desk audit FILE…
Un punto que revisar por línea: archivo, anotación, código, regla, frase. Formaciones, límites,
orden, horas, firmas, campos que faltan, lo anotado contra el aviso y lo deshecho.
    --json   un objeto JSON con todos los puntos
Ejemplo:  desk audit final.json
",
        },
        Help {
            name: "paper",
            line: "revisar actas en papel transcritas",
            more: "desk paper FILE…
Reconstruye el orden de las jugadas a partir de las rondas de saque y lo compara con todas las
demás casillas; escribe las dos cosas como JSON, un objeto por acta.
    --text     para leer
    --record   en su lugar, el registro de partido reconstruido, para desk compare
Ejemplo:  desk paper --text court2.json
",
        },
        Help {
            name: "compare",
            line: "en qué no coinciden dos registros de un partido",
            more: "desk compare A B
La primera jugada en que dos registros no coinciden, el marcador en ella y todas las diferencias,
explicadas con las menos causas posibles; como JSON. Uno de los dos puede ser un acta en papel.
Si los registros son de dos partidos distintos, eso se dice primero.
    --text   para leer
Ejemplo:  desk compare --text stand.json table.json
",
        },
        Help {
            name: "standings",
            line: "la clasificación de un grupo",
            more: "desk standings FILE…
La clasificación de un archivo con los resultados de un grupo, o de muchos registros de partido y
actas en papel; como JSON, con la razón de cada puesto. Un grupo de una copia de seguridad se
nombra así: backup.json#pool-1.
    --text          para leer
    --csv           como tabla para hoja de cálculo
    --by LIST       para registros: la regla de clasificación, con el primer criterio delante:
                    wins match_points set_ratio point_ratio set_difference point_difference
                    sets_won head_to_head; sin ella, wins,set_ratio,point_ratio,head_to_head
    --points NAME   para registros: 3210 (3 por ganar; 2 y 1 si se llegó al último set),
                    210 (2 por ganar, 1 por perder, 0 por no presentarse), 21, 20 o 30
    --meetings N    para registros: cuántas veces se enfrentan dos equipos; sin ella, una
Ningún partido cuenta dos veces. Lo que está repetido, falta, se mezcla o está en duda es un punto
que revisar: estado de salida 1.
Ejemplos: desk standings --text pool.json
          desk standings --text --by wins,head_to_head pool1/*.json
",
        },
        Help {
            name: "sheet",
            line: "el acta de registros de partido",
            more: "desk sheet FILE…
El acta completa como texto.
    --html            para imprimir, una página que no necesita nada más
    --csv             los puntos de todos como una tabla para hoja de cálculo
    --clock +02:00    cuánto va adelantada la hora del gimnasio; sin ella, la hora universal
Ejemplo:  desk sheet --html --clock +01:00 final.json > final.html
",
        },
        Help {
            name: "replay",
            line: "el estado final de registros de partido, un objeto JSON por línea",
            more: "desk replay FILE…
Recorre cada registro y escribe el estado después de su última anotación: un objeto JSON por línea.
Ejemplo:  desk replay final.json
",
        },
        Help {
            name: "pack",
            line: "un registro de partido en pocos bytes, para compartirlo como código",
            more: "desk pack FILE
El registro en tan pocos bytes que cabe en un código; van a la salida estándar tal cual.
Ejemplo:  desk pack final.json > final.pack
",
        },
        Help {
            name: "unpack",
            line: "el registro de partido a partir de uno empaquetado",
            more: "desk unpack FILE
El registro de partido a partir de uno empaquetado, igual hasta el último byte.
Ejemplo:  desk unpack final.pack > final.json
",
        },
        Help {
            name: "simulate",
            line: "partidos inventados, para pruebas y para explorar",
            more: "desk simulate
Partidos inventados según las reglas del juego, un registro por línea; la misma semilla da el mismo
partido.
    --seed S        un número; sin ella, 1
    --matches N     cuántos, con semillas seguidas; sin ella, 1
    --preset NAME   international, school_senior, school_junior o tally
Ejemplo:  desk simulate --seed 7 > match.json
",
        },
    ],
    overview,
    help,
};

/// What holds for all of them.
const END: &str = "\
Un FILE es un registro de partido, un registro empaquetado o una copia de seguridad con muchos
registros, actas en papel y grupos; - es la entrada estándar. FILE#PART es una parte de una copia de
seguridad, como la nombra desk list: backup.json#paper-1. Sus grupos se llaman backup.json#pool-1, etc.
desk COMMAND --help dice más de un comando, con un ejemplo.
Estado de salida: 0 todo bien, 1 puntos que revisar, 2 no se pudo leer.
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
