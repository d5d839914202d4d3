//! What the commands of the command line say of themselves: tables of their options.

#[derive(Clone, Copy)]
/// A command: its name, what it does in a line, and the whole of it with an example.
pub struct Help {
    pub name: &'static str,
    pub line: &'static str,
    pub more: &'static str,
}

words! { CommandHelpWords in command_help;
    /// All commands, in the order in which a coordinator meets them.
    all -> [Help; 10];
    /// The commands in a line each.
    overview() -> String;
    /// The whole help of a command.
    help(name: &str) -> Option<&'static str>;
}
