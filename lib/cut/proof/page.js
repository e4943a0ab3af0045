"use strict";
(() => {
  const sheet = document.querySelector(".sheet");
  const drawing = document.querySelector(".plate svg");
  const controls = document.querySelector(".controls").elements;
  const width = Number(sheet.dataset.width);
  const height = Number(sheet.dataset.height);
  const key = document.getElementById("key");
  const films = [...drawing.querySelectorAll("g[id^='film-']")];
  const boxes = [...document.querySelectorAll("input[name='film']")];
  const words = [...document.querySelectorAll(".key button")];
  const caption = document.querySelector(".caption");
  const pixelsAMillimetre = 96 / 25.4;

  const say = () => {
    const side = document.querySelector("input[name='side']:checked").parentElement.textContent.trim();
    const chosen = words.find((word) => word.getAttribute("aria-pressed") === "true");
    caption.textContent = side + (chosen ? ". Shown: " + chosen.textContent : "") + ".";
  };

  const showFilms = () => {
    for (const box of boxes) document.getElementById("film-" + box.value).classList.toggle("off", !box.checked);
  };

  // What lies behind from one side lies in front from the other.
  const showSide = () => {
    const back = controls.side.value === "back";
    sheet.dataset.side = controls.side.value;
    for (const film of back ? [...films].reverse() : films) drawing.insertBefore(film, key);
    say();
  };

  const showKey = () => {
    key.classList.toggle("shown", controls.key.checked);
    const chosen = words.findIndex((word) => word.getAttribute("aria-pressed") === "true");
    for (const place of key.children) place.classList.toggle("off", chosen >= 0 && place.dataset.word !== String(chosen));
    say();
  };

  const choose = (word) => {
    const on = word.getAttribute("aria-pressed") !== "true";
    for (const other of words) other.setAttribute("aria-pressed", String(on && other === word));
    if (on) controls.key.checked = true;
    showKey();
  };

  // Ticks and figures of one ruler; steps are chosen so that figures never touch.
  const drawRuler = (ruler, scale) => {
    const across = ruler.classList.contains("across");
    const end = ruler.classList.contains("end");
    const inches = ruler.dataset.unit === "in";
    const unit = scale * (inches ? 25.4 : 1);
    const steps = inches ? [0.125, 0.25, 0.5, 1, 2, 5, 10, 20, 50] : [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];
    const label = steps.find((step) => step * unit >= 32 && (!inches || step >= 1)) || steps.at(-1);
    const tick = steps.find((step) => step * unit >= 4) || label;
    const length = (across ? width : height) * scale;
    const depth = parseFloat(getComputedStyle(document.documentElement).fontSize) * 2;
    let path = "";
    const figures = [];
    for (let i = 0; i * tick * unit <= length + 0.01; ++i) {
      const value = i * tick;
      const at = value * unit;
      const labelled = Math.abs(value / label - Math.round(value / label)) < 1e-9;
      const size = labelled ? 9 : Math.abs(value / (label / 2) - Math.round(value / (label / 2))) < 1e-9 ? 7 : 4;
      const from = end ? 2 : depth - 2;
      const to = end ? 2 + size : depth - 2 - size;
      path += across ? `M${at} ${from}V${to}` : `M${from} ${at}H${to}`;
      if (labelled) figures.push([value, at]);
    }
    const name = "http://www.w3.org/2000/svg";
    const ticks = document.createElementNS(name, "path");
    ticks.setAttribute("d", path);
    const texts = figures.map(([value, at], i) => {
      const text = document.createElementNS(name, "text");
      text.textContent = i === 0 ? ruler.dataset.unit : String(value);
      const x = across ? at : end ? 13 : depth - 13;
      const y = across ? (end ? 22 : depth - 14) : at + 4;
      text.setAttribute("x", x);
      text.setAttribute("y", y);
      text.setAttribute("text-anchor", across ? (i === 0 ? "start" : "middle") : end ? "start" : "end");
      return text;
    });
    ruler.replaceChildren(ticks, ...texts);
  };

  const fit = () => {
    const rulers = controls.rulers.checked;
    sheet.classList.toggle("bare", !rulers);
    let scale = Number(controls.size.value) * pixelsAMillimetre;
    if (controls.size.value === "fit") {
      const table = sheet.parentElement;
      const rem = parseFloat(getComputedStyle(document.documentElement).fontSize);
      const edges = (rulers ? 4 : 2) * rem + 0.5 * rem + 4;
      const high = Math.max(0.6 * window.innerHeight, window.innerHeight - 12 * rem);
      scale = Math.max(0.1, Math.min((table.clientWidth - edges) / width, (high - edges) / height));
    }
    drawing.style.width = width * scale + "px";
    drawing.style.height = height * scale + "px";
    if (rulers) for (const ruler of document.querySelectorAll(".ruler")) drawRuler(ruler, scale);
  };

  document.querySelector(".controls").addEventListener("submit", (event) => event.preventDefault());
  document.querySelector(".controls").addEventListener("input", (event) => {
    const name = event.target.name;
    if (name === "film") showFilms();
    if (name === "side") showSide();
    if (name === "key") showKey();
    if (name === "rulers" || name === "size") fit();
    if (name === "outline") document.getElementById("blank").classList.toggle("bare", !event.target.checked);
    if (name === "behind") document.getElementById("blank").setAttribute("fill", event.target.value);
  });
  for (const word of words) word.addEventListener("click", () => choose(word));
  controls.print.addEventListener("click", () => window.print());
  // On paper the drawing has the size that its own attributes state.
  window.addEventListener("beforeprint", () => drawing.removeAttribute("style"));
  window.addEventListener("afterprint", fit);
  window.addEventListener("resize", fit);
  showFilms();
  showSide();
  showKey();
  fit();
})();
