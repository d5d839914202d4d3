// Runs before anything is painted: light or dark as it was chosen on this phone, and whether the address leads
// past the start. Written for every browser.
try {
  var theme = localStorage.getItem("dutystand/s/theme");
  if (theme) document.documentElement.setAttribute("data-theme", theme);
} catch (forbidden) {
  // A browser that keeps nothing has nothing chosen.
}
if (!/^(#(\/start)?)?$/.test(location.hash)) document.documentElement.className = "elsewhere";
