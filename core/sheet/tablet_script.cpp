#include "core/sheet/tablet_script.h"

namespace inchwright {

std::string_view tabletStyle() {
  return R"(* { box-sizing: border-box; }
body { margin: 0; padding: 12px 12px 104px; font: 20px/1.4 sans-serif; color: #000; background: #fff; }
h1 { font-size: 26px; margin: 8px 0; }
h2 { font-size: 30px; margin: 8px 0; }
header p, footer p, .count { font-size: 16px; margin: 4px 0; }
.draft, .before, .kit { border: 4px solid #000; padding: 8px 12px; font-weight: bold; }
.before h2, .kit h2 { font-size: 22px; margin: 0; }
.kit { border-width: 2px; font-weight: normal; }
.mind { list-style: "\26a0  "; font-weight: bold; }
.lines li { font-size: 24px; margin: 10px 0; }
.rows { list-style: none; margin: 0; padding: 0; }
.rows li { margin: 0 0 8px; }
button { font: inherit; color: #000; background: #fff; border: 3px solid #000; min-height: 56px; padding: 8px 12px; touch-action: manipulation; }
.tick { width: 100%; text-align: left; display: flex; flex-wrap: wrap; align-items: center; gap: 4px 20px; }
.box { flex: none; width: 40px; height: 40px; border: 3px solid #000; text-align: center; font: bold 34px/32px sans-serif; }
.tick[aria-pressed=true] .box::before { content: "\2713"; }
.tick[aria-pressed=true] { border-style: dashed; }
.place { font-size: 30px; font-weight: bold; min-width: 2.2em; overflow-wrap: anywhere; }
.at { font-size: clamp(34px, 8.5vw, 64px); font-variant-numeric: tabular-nums; white-space: nowrap; }
.at b { font-size: 0.6em; }
.what { flex-basis: 100%; font-size: 20px; overflow-wrap: anywhere; }
.found { display: flex; flex-wrap: wrap; gap: 8px 16px; padding: 8px 0; }
.found input { font: 24px sans-serif; width: 7em; min-height: 56px; border: 3px solid #000; padding: 4px 8px; }
.line { width: 100%; font: 20px monospace; border: 3px solid #000; padding: 8px; }
nav { position: fixed; left: 0; right: 0; bottom: 0; display: flex; gap: 12px; padding: 12px; background: #fff; border-top: 3px solid #000; }
nav[hidden], [hidden] { display: none; }
nav button { flex: 1; min-height: 72px; font-size: 26px; }
button:disabled { color: #767676; border-color: #767676; }
button:focus-visible, input:focus-visible { outline: 4px solid #000; outline-offset: 2px; }
)";
}

std::string_view tabletScript() {
  return R"("use strict";
(function () {
  var all = function (query, within) { return Array.prototype.slice.call((within || document).querySelectorAll(query)); };
  var steps = all("article.step");
  var keep = null;
  try {
    var store = window.localStorage;
    store.setItem("inchwright:try", "1");
    if (store.getItem("inchwright:try") === "1") keep = store;
    store.removeItem("inchwright:try");
  } catch (refused) { keep = null; }
  if (!keep) document.getElementById("unkept").hidden = false;
  var edition = document.body.dataset.edition;
  function read(key) { try { return keep ? keep.getItem("inchwright:" + edition + ":" + key) : null; } catch (refused) { return null; } }
  function write(key, value) {
    try { if (keep) keep.setItem("inchwright:" + edition + ":" + key, value); }
    catch (full) { document.getElementById("unkept").hidden = false; }
  }
  var at = 0;
  function show(step, scroll) {
    at = Math.max(0, Math.min(steps.length - 1, step));
    steps.forEach(function (one, i) { one.hidden = i !== at; });
    all("section.setup").forEach(function (one) {
      one.hidden = !one.contains(steps[at]);
      var first = one.querySelector("article.step") === steps[at];
      all(".before, .kit, .zero", one).forEach(function (block) { block.hidden = !first; });
      all(".still", one).forEach(function (line) { line.hidden = first; });
    });
    document.getElementById("back").disabled = at === 0;
    document.getElementById("next").disabled = at === steps.length - 1;
    write("at", String(at));
    if (scroll) window.scrollTo(0, 0);
  }
  steps.forEach(function (step, i) {
    all(".tick", step).forEach(function (tick, j) {
      var key = "tick:" + i + ":" + j + ":" + tick.dataset.tick;
      tick.setAttribute("aria-pressed", read(key) === "1" ? "true" : "false");
      tick.addEventListener("click", function () {
        var done = tick.getAttribute("aria-pressed") !== "true";
        tick.setAttribute("aria-pressed", done ? "true" : "false");
        write(key, done ? "1" : "0");
      });
    });
  });
  all("section.setup").forEach(function (setup) {
    var inputs = all("input[data-found]", setup);
    var line = setup.querySelector("textarea.line");
    if (!line) return;
    function gather() {
      var places = [];
      var byPlace = {};
      inputs.forEach(function (input) {
        var figure = input.value.replace(/[;:\s]+/g, " ").trim();
        if (!figure) return;
        if (setup.dataset.unit === "mm" && !/[a-z"]/i.test(figure)) figure += " mm";
        var place = input.dataset.place;
        if (!byPlace["_" + place]) { byPlace["_" + place] = [place]; places.push("_" + place); }
        byPlace["_" + place].push(input.dataset.found + " " + figure);
      });
      line.value = places.length ? "found " + setup.dataset.setup + ": " +
        places.map(function (place) { return byPlace[place].join(" "); }).join("; ") : "";
    }
    inputs.forEach(function (input) {
      var key = "found:" + setup.dataset.key + ":" + input.dataset.place + ":" + input.dataset.found;
      input.value = read(key) || "";
      input.addEventListener("input", function () { write(key, input.value); gather(); });
    });
    gather();
    setup.querySelector("button.copy").addEventListener("click", function () {
      line.focus();
      line.select();
      try { document.execCommand("copy"); } catch (refused) { line.select(); }
    });
  });
  if (steps.length > 0) {
    document.getElementById("walk").hidden = false;
    document.getElementById("back").addEventListener("click", function () { show(at - 1, true); });
    document.getElementById("next").addEventListener("click", function () { show(at + 1, true); });
    show(parseInt(read("at") || "0", 10) || 0, false);
  }
})();
)";
}

}  // namespace inchwright
