//! What the machine could not do, with the way out.

use crate::machine::*;
use app::machine::{CameraTrouble, HandOverTrouble};
use app::ports::StorageTrouble;

/// In English.
pub static WORDS: MachineWords = MachineWords {
    storage,
    camera,
    hand_over,
};

fn storage(trouble: &StorageTrouble) -> String {
    match trouble {
        StorageTrouble::Refused => {
            "This browser does not allow this page to store anything.".to_owned()
        }
        StorageTrouble::Full => {
            "The storage of this browser is full. Is there still room on this device? Then close the whole \
             browser and open it again. After a crash some browsers count their room wrongly."
                .to_owned()
        }
        StorageTrouble::Lost => {
            "The browser lost its storage for a moment. The app is trying again.".to_owned()
        }
        StorageTrouble::Unknown(why) => {
            format!("The browser could not store the entry{}.", in_its_words(why))
        }
    }
}

fn camera(trouble: &CameraTrouble) -> String {
    match trouble {
        CameraTrouble::Refused => {
            "The camera is not allowed for this page. Allow it in the browser's settings, or take a photo of \
             the code and choose it here."
                .to_owned()
        }
        CameraTrouble::NoCamera => {
            "There is no camera that this browser can use. Take a photo of the code and choose it here, or \
             ask for the file."
                .to_owned()
        }
        CameraTrouble::Failed(why) => format!(
            "The code could not be looked at{}. Try again, or ask for the file.",
            in_its_words(why)
        ),
    }
}

fn hand_over(trouble: &HandOverTrouble) -> String {
    match trouble {
        HandOverTrouble::Refused => {
            "The phone did not allow the file to be shared. Tap again.".to_owned()
        }
        HandOverTrouble::NoWay => {
            "The phone's list of apps does not take this file, and an installed app has no downloads. Show \
             the record as codes to another phone."
                .to_owned()
        }
        HandOverTrouble::Failed(why) => {
            format!("The file could not be shared{}. Tap again.", in_its_words(why))
        }
    }
}
