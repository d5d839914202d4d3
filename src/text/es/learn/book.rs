//! The words of the pages that lead to what there is to learn, in Spanish.

use crate::learn::book::*;

/// In Spanish.
pub static WORDS: BookWords = BookWords {
    book_more: "Léelo y después pruébalo. Nada cuenta en tu contra y nada sale de este teléfono.",
    book_order: "¿Es nuevo para ti? Ve de arriba abajo.",
    decisions: "Decisiones",
    decisions_more: "Arrastra pies, balón y jugadores. Mira qué es falta y qué no.",
    court: "Campo",
    court_more: "Toca una zona o una línea. Mira para qué sirve.",
    roles: "Tareas",
    roles_more: "Qué hace cada persona del equipo arbitral antes, durante y después.",
    care: "Seguridad",
    care_more: "Suelo, postes, lesiones, tiempo: cuándo no se juega y a quién preguntar.",
    back_to_match: "Volver al partido",
};
