// Starts the page, or says in a sentence that it cannot. Which module is its own stands in its head.

const starting = document.getElementById("starting");

function sayInstead(id) {
  starting.hidden = true;
  document.getElementById(id).hidden = false;
}

// What is tapped on the start screen before the program is there is done once it is.
let tapped;
starting.addEventListener("click", ({ target }) => {
  tapped = target.closest("[data-then]")?.dataset.then ?? tapped;
});

// Loads the reader of codes, once, when the page asks for it. The worker has kept it with the rest.
let reader;
globalThis.dutystandReader = () => {
  reader ??= import("./reader.js").then((glue) =>
    glue.default({ module_or_path: new URL("./reader_bg.wasm", import.meta.url) }),
  );
  // What failed once may go well the next time.
  reader.catch(() => { reader = undefined; });
  return reader;
};

// What the header `frame-ancestors` does where a host sends it; a page has no such policy of its own.
if (top !== self) {
  sayInstead("framed");
} else if (typeof WebAssembly !== "object" || !("instantiateStreaming" in WebAssembly)) {
  sayInstead("too-old");
} else {
  const [script, module] = ["modulepreload", "preload][as=fetch"].map((rel) => document.querySelector(`link[rel=${rel}]`).href);
  // The program says so once it is in the page, where its language is there too.
  addEventListener("dutystand-drawn", () => {
    starting.remove();
    document.getElementById(tapped)?.click();
  }, { once: true });
  import(script)
    .then((glue) => glue.default({ module_or_path: module }))
    .catch((trouble) => {
      // Whether the browser is at fault or the connection broke cannot be told from here.
      sayInstead("not-started");
      throw trouble;
    });
}
