// Starts the page, or says in a sentence that it cannot.

const starting = document.getElementById("starting");

function sayInstead(id) {
  starting.hidden = true;
  document.getElementById(id).hidden = false;
}

if (typeof WebAssembly !== "object" || !("instantiateStreaming" in WebAssembly)) {
  sayInstead("too-old");
} else {
  import("./dutystand.js")
    .then((glue) => glue.default({ module_or_path: new URL("./dutystand_bg.wasm", import.meta.url) }))
    .then(() => starting.remove())
    .catch((trouble) => {
      // Whether the browser is at fault or the connection broke cannot be told from here.
      sayInstead("not-started");
      throw trouble;
    });
}
