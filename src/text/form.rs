//! What is wrong with a form that somebody keyed in as JSON, each with the way out.

use reports::FormProblemKind;

words! { FormWords in form;
    /// What is wrong at a place of a form, in one sentence or two.
    form_problem(kind: &FormProblemKind) -> String;
}
