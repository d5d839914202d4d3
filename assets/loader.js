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
      // A module that the browser cannot even compile was written after the browser was.
      sayInstead(trouble instanceof WebAssembly.CompileError ? "too-old" : "not-started");
      throw trouble;
    });
}
