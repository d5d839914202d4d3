//! The words of the toss, in Spanish.

use crate::score_sheet::chosen;
use crate::setup::toss::*;
use app::machine::Face;
use game::Choice;

/// In Spanish.
pub static WORDS: TossWords = TossWords {
    who_is_heads: "Cada capitán recibe un lado de la moneda. ¿Para quién es cara?",
    toss_the_coin: "Lanzar la moneda",
    tossed_already: "Ya hicimos el sorteo",
    use_the_coin: "Usar la moneda de aquí",
    no_coin:
        "Este navegador no puede hacer un sorteo justo. Lanza una moneda real y anota aquí el \
         resultado.",
    choose_again: "Elegir otra vez",
    record_toss: "Anotar el sorteo",
    toss_again: "Editar el sorteo",
    who_serves_first: "¿Quién saca primero?",
    who_is_left: "¿Quién empieza a la izquierda, visto desde la silla?",
    who_chose: "¿Quién ganó y qué eligió ese capitán? (opcional)",
    serves_first: "primer saque",
    seen_from_the_stand: "Visto desde la silla",
    gets_heads,
    coin_sides,
    face,
    won_the_toss,
    what_does_choose,
    toss_choice,
    as_seen: "Aquí se jugaron sets sin sorteo. Anota lo que ves en el campo.",
    record_as_seen: "Anotar quién saca",
    won_and_chose,
    chose,
};

fn gets_heads(name: &str) -> String {
    format!("Cara: {name}")
}

fn coin_sides(heads: &str, tails: &str) -> String {
    format!("Cara: {heads}. Cruz: {tails}.")
}

fn face(face: Face) -> &'static str {
    match face {
        Face::Heads => "Cara",
        Face::Tails => "Cruz",
    }
}

fn won_the_toss(winner: &str) -> String {
    format!("Sorteo ganado por {winner}")
}

fn what_does_choose(name: &str) -> String {
    format!("¿Qué elige el capitán de {name}?")
}

fn toss_choice(choice: Choice) -> &'static str {
    match choice {
        Choice::Serve => "Sacar",
        Choice::Receive => "Recibir",
        Choice::Left => "Lado izquierdo",
        Choice::Right => "Lado derecho",
    }
}

fn won_and_chose(name: &str, choice: Choice) -> String {
    format!("Sorteo ganado por {name}. Elección: {}.", chosen(choice))
}

fn chose(name: &str, choice: Choice) -> String {
    format!("Elección de {name}: {}.", chosen(choice))
}
