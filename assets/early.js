// Runs before anything is painted: light or dark as it was chosen on this phone, whether the address leads
// past the start, and the match that can be gone on with. Written for every browser.
try {
  var theme = localStorage.getItem("dutystand/s/theme");
  if (theme) document.documentElement.setAttribute("data-theme", theme);
} catch (forbidden) {
  // A browser that keeps nothing has nothing chosen.
}
if (!/^(#(\/start)?)?$/.test(location.hash)) document.documentElement.className = "elsewhere";

// The button of the running match, as src/ui/start draws it, from the three lines that it keeps: where the match
// goes on, the teams, the standing.
function GoOn() {
  return Reflect.construct(HTMLElement, [], GoOn);
}
GoOn.prototype = Object.create(HTMLElement.prototype);
GoOn.prototype.connectedCallback = function () {
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
  [["span", "continue-word", this.dataset.word], ["strong", "", lines[1]], ["span", "continue-score tabular", lines[2]]].forEach(function (part) {
    var inside = document.createElement(part[0]);
    inside.className = part[1];
    inside.textContent = part[2];
    button.appendChild(inside);
  });
  this.appendChild(button);
};
if (window.customElements) customElements.define("go-on", GoOn);
