// Only a browser that knows no modules runs this; it is written for such a browser.
document.getElementById("starting").hidden = true;
document.getElementById("too-old").hidden = false;
