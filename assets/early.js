// Runs before anything is painted: light or dark and the language as they were chosen on this phone, whether the
// address leads past the start, and the match that can be gone on with. Written for every browser.
var language;
try {
  var theme = localStorage.getItem("dutystand/s/theme");
  if (theme) document.documentElement.setAttribute("data-theme", theme);
  language = localStorage.getItem("dutystand/s/language");
} catch (forbidden) {
  // A browser that keeps nothing has nothing chosen.
}
// As src/app/language.rs chooses: by hand, else the phone's first language that is spoken here
// (tests/browser/spoken.rs compares the two).
if (language !== "en" && language !== "es") language = "";
(navigator.languages || [navigator.language]).forEach(function (tag) {
  var main = String(tag).toLowerCase().split(/[-_]/)[0];
  if (!language && (main === "en" || main === "es")) language = main;
});
var inSpanish = language === "es";
if (inSpanish) document.documentElement.lang = "es";
if (!/^(#(\/start)?)?$/.test(location.hash)) document.documentElement.className = "elsewhere";

// An element that does something as soon as the page is read so far.
function element(name, arrives) {
  function Element() {
    return Reflect.construct(HTMLElement, [], Element);
  }
  Element.prototype = Object.create(HTMLElement.prototype);
  Element.prototype.connectedCallback = arrives;
  if (window.customElements) customElements.define(name, Element);
}

// The button of the running match, as src/ui/start draws it, from the three lines that it keeps: where the match
// goes on, the teams, the standing.
element("go-on", function () {
  var lines = [];
  try {
    lines = (localStorage.getItem("dutystand/s/continue") || "").split("\n");
  } catch (forbidden) {
    // As above.
  }
  if (lines.length !== 3) return;
  var button = document.createElement("button");
  button.type = "button";
  button.className = "button primary continue";
  button.setAttribute("data-then", "continue");
  [["span", "continue-word", inSpanish ? this.dataset.es : this.dataset.word], ["strong", "", lines[1]], ["span", "continue-score tabular", lines[2]]].forEach(function (part) {
    var inside = document.createElement(part[0]);
    inside.className = part[1];
    inside.textContent = part[2];
    button.appendChild(inside);
  });
  this.appendChild(button);
});

// Stands behind the words of the page itself, and says them in the language of this phone.
element("own-language", function () {
  if (!inSpanish) return;
  document.querySelectorAll("[data-es]").forEach(function (said) {
    if (said.dataset.word === undefined) said.textContent = said.dataset.es;
  });
});
