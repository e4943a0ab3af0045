"use strict";
(() => {
  const grid = document.getElementById("grid");
  const rings = document.getElementById("rings");
  const told = document.getElementById("told");
  const count = document.getElementById("count");
  const key = document.getElementById("key");
  const keyButton = document.getElementById("show-key");
  const moveButton = document.getElementById("move");
  const box = document.querySelector(".box");
  const root = document.documentElement;
  const cells = [...grid.rows].map((row) => [...row.cells]);
  const height = cells.length;
  const width = cells[0].length;
  const isOpen = ({ row, column }) => !cells[row][column].classList.contains("closed");
  const letters = cells.map((line) => line.map((cell) => cell.textContent));
  const words = [...document.querySelectorAll("#words li")].map((item, place) => ({
    item, place, shown: item.querySelector("bdi").textContent, letters: item.dataset.letters, found: null,
  }));
  const same = (a, b) => a.row === b.row && a.column === b.column;
  const placeText = ({ row, column }) => `row ${row + 1}, column ${column + 1}`;

  // ---- What is told

  // A word runs in its own direction and turns nothing around it.
  const isolated = (text) => {
    const element = document.createElement("bdi");
    element.textContent = text;
    return element;
  };
  const tell = (...parts) => {
    told.classList.toggle("done", words.every((word) => word.found));
    told.replaceChildren(...parts);
  };
  const listed = (some) => some.flatMap((word, i) => [i > 0 ? " and " : "", isolated(word.shown)]);
  const left = () => {
    const rest = words.filter((word) => !word.found).length;
    if (rest === 0) return words.length === 1 ? "That was the only word: all done." : `All ${words.length} words are found: all done.`;
    return rest === 1 ? "1 word is left." : `${rest} words are left.`;
  };
  const showCount = () => {
    count.textContent = `${words.filter((word) => word.found).length} of ${words.length} found`;
  };

  // ---- Rings

  const svg = (name, attributes) => {
    const element = document.createElementNS("http://www.w3.org/2000/svg", name);
    for (const [attribute, value] of Object.entries(attributes)) element.setAttribute(attribute, value);
    return element;
  };
  rings.setAttribute("viewBox", `0 0 ${width} ${height}`);
  rings.setAttribute("preserveAspectRatio", "none");
  const setRing = (ring, from, to) => {
    const radius = 0.38;
    const down = to.row - from.row;
    const across = to.column - from.column;
    ring.setAttribute("x", -radius);
    ring.setAttribute("y", -radius);
    ring.setAttribute("rx", radius);
    ring.setAttribute("height", 2 * radius);
    ring.setAttribute("width", Math.hypot(down, across) + 2 * radius);
    ring.setAttribute("transform", `translate(${from.column + 0.5} ${from.row + 0.5}) rotate(${Math.atan2(down, across) * 180 / Math.PI})`);
  };
  const colours = (scheme, place) => {
    const all = rings.dataset[scheme].split(" ");
    return all[place % all.length];
  };
  for (const [place, word] of words.entries())
    for (const scheme of ["light", "dark"]) word.item.style.setProperty("--" + scheme, colours(scheme, place));
  const addRing = (word, look, from, to) => {
    const ring = svg("rect", { class: "ring " + look, "data-word": word.place });
    for (const scheme of ["light", "dark"]) ring.style.setProperty("--" + scheme, colours(scheme, word.place));
    setRing(ring, from, to);
    rings.append(ring);
  };
  const trail = svg("rect", { id: "trail", visibility: "hidden" });
  rings.append(trail);
  const showTrail = (from, to) => {
    trail.setAttribute("visibility", from ? "visible" : "hidden");
    if (from) setRing(trail, from, to);
  };

  // ---- Lines of letters

  // The cells from one to another in a straight line, or nothing where they do not lie on one.
  const line = (from, to) => {
    const down = to.row - from.row;
    const across = to.column - from.column;
    const steps = Math.max(Math.abs(down), Math.abs(across));
    if (steps === 0 || (down !== 0 && across !== 0 && Math.abs(down) !== Math.abs(across))) return null;
    return Array.from({ length: steps + 1 }, (_, i) => ({ row: from.row + i * down / steps, column: from.column + i * across / steps }));
  };
  const spelled = (some, between) => some.map(({ row, column }) => letters[row][column]).join(between);

  // The words that a line of cells spells from either end: two where one is the other turned round.
  const wordsOn = (some) => {
    if (!some.every(isOpen)) return [];
    const forward = spelled(some, " ");
    const backward = spelled([...some].reverse(), " ");
    return words.filter((word) => word.letters === forward || word.letters === backward);
  };

  // Those who see no ring hear of it in each letter.
  const nameCells = () => {
    const names = new Map();
    for (const word of words)
      if (word.found)
        for (const { row, column } of line(word.found.from, word.found.to)) {
          const cell = cells[row][column];
          names.set(cell, (names.get(cell) || `${letters[row][column]}, found in `) + (names.has(cell) ? " and " : "") + word.shown);
        }
    for (const cell of cells.flat()) {
      if (names.has(cell)) cell.setAttribute("aria-label", names.get(cell));
      else cell.removeAttribute("aria-label");
    }
  };
  const mark = (some, from, to) => {
    for (const word of some) {
      word.found = { from, to };
      word.item.classList.add("found");
      word.item.querySelector(".state").textContent = "found";
      addRing(word, "found", from, to);
    }
    nameCells();
    showCount();
  };
  const tryLine = (from, to) => {
    const some = line(from, to);
    if (!some) return tell("Those two letters are not on one straight line: a word runs across, down or slantwise. Have another go.");
    if (!some.every(isOpen)) return tell("That line crosses a gap in the grid. Have another go.");
    const hit = wordsOn(some);
    const fresh = hit.filter((word) => !word.found);
    if (hit.length === 0) return tell("Not on the list: ", isolated(spelled(some, "")), ". Have another go.");
    if (fresh.length === 0) return tell("You have that one already: ", ...listed(hit), ". ", left());
    mark(fresh, from, to);
    keep();
    tell("Found: ", ...listed(fresh), `, from ${placeText(from)} to ${placeText(to)}. `, left());
  };

  // ---- What is kept for the next visit, where the browser allows it

  const name = "letterlode-found-" + document.body.dataset.puzzle;
  const keep = () => {
    try {
      const pairs = words.filter((word) => word.found).map(({ found: { from, to } }) => [from.row, from.column, to.row, to.column]);
      if (pairs.length > 0) localStorage.setItem(name, JSON.stringify(pairs));
      else localStorage.removeItem(name);
    } catch {
      // Without storage the puzzle is begun afresh at the next visit.
    }
  };
  const recall = () => {
    try {
      const inside = (row, column) => Number.isInteger(row) && Number.isInteger(column) && cells[row]?.[column] !== undefined;
      for (const [fromRow, fromColumn, toRow, toColumn] of JSON.parse(localStorage.getItem(name)) || []) {
        if (!inside(fromRow, fromColumn) || !inside(toRow, toColumn)) continue;
        const [from, to] = [{ row: fromRow, column: fromColumn }, { row: toRow, column: toColumn }];
        mark(wordsOn(line(from, to) || []).filter((word) => !word.found), from, to);
      }
    } catch {
      // As above.
    }
    tell(words.some((word) => word.found) ? "What you found before is kept. " : "", left());
  };

  // ---- The first letter, then the last

  let first = null;
  let current = null;
  const takeBack = () => {
    if (first) cells[first.row][first.column].removeAttribute("aria-selected");
    first = null;
    showTrail(null);
  };
  const choose = (cell) => {
    if (!first) {
      first = cell;
      cells[cell.row][cell.column].setAttribute("aria-selected", "true");
      showTrail(cell, cell);
      return tell("One end is ", isolated(letters[cell.row][cell.column]), ` in ${placeText(cell)}. Now choose the other end.`);
    }
    const from = first;
    takeBack();
    if (same(from, cell)) tell("Taken back.");
    else tryLine(from, cell);
  };

  // ---- Keys: one cell of the grid takes part in the order of the Tab key, the one that was last gone to

  const makeCurrent = (cell) => {
    if (current) cells[current.row][current.column].tabIndex = -1;
    current = cell;
    cells[cell.row][cell.column].tabIndex = 0;
    if (first && !press) showTrail(first, line(first, cell) ? cell : first);
  };
  const openCells = cells.flatMap((some, row) => some.map((_, column) => ({ row, column }))).filter(isOpen);
  // The next open cell that way; gaps are passed over.
  const next = ({ row, column }, down, across) => {
    for (let to = { row: row + down, column: column + across }; cells[to.row]?.[to.column]; to = { row: to.row + down, column: to.column + across })
      if (isOpen(to)) return to;
    return null;
  };
  const pageRows = 10;
  // The farthest open cell of the column, within some rows.
  const farther = ({ row, column }, down) => {
    for (let steps = pageRows; steps > 0; --steps) {
      const to = { row: row + steps * down, column };
      if (cells[to.row] && isOpen(to)) return to;
    }
    return null;
  };
  const goals = {
    ArrowLeft: (cell) => next(cell, 0, -1),
    ArrowRight: (cell) => next(cell, 0, 1),
    ArrowUp: (cell) => next(cell, -1, 0),
    ArrowDown: (cell) => next(cell, 1, 0),
    Home: (cell, whole) => openCells.find((other) => whole || other.row === cell.row),
    End: (cell, whole) => openCells.findLast((other) => whole || other.row === cell.row),
    PageUp: (cell) => farther(cell, -1),
    PageDown: (cell) => farther(cell, 1),
  };
  const placeOf = (element) => {
    const cell = element.closest?.("#grid td");
    return cell && !cell.classList.contains("closed") ? { row: cell.parentElement.rowIndex, column: cell.cellIndex } : null;
  };
  for (const { row, column } of openCells) cells[row][column].tabIndex = -1;
  grid.addEventListener("focusin", (event) => {
    const cell = placeOf(event.target);
    if (!cell) return;
    makeCurrent(cell);
    // A cell of which an edge is seen is not brought into the box by having focus.
    if (event.target.matches(":focus-visible")) event.target.scrollIntoView({ block: "nearest", inline: "nearest" });
  });
  grid.addEventListener("keydown", (event) => {
    const cell = placeOf(event.target);
    if (!cell || event.altKey || event.metaKey) return;
    if (event.key === "Escape" && (first || press)) {
      press = null;
      takeBack();
      tell("Taken back.");
    } else if ((event.key === "Enter" || event.key === " ") && !event.ctrlKey) {
      if (!event.repeat) choose(cell);
    } else if (goals[event.key] && (!event.ctrlKey || event.key === "Home" || event.key === "End")) {
      const to = goals[event.key](cell, event.ctrlKey);
      if (to) cells[to.row][to.column].focus();
    } else {
      return;
    }
    event.preventDefault();
  });

  // ---- Mouse, finger and pen: a press and a release on one letter choose it, on two they are both ends

  let press = null;
  let pressed = false;
  // The cell under a pointer; outside the grid the nearest one, as far as a cell away.
  const cellAt = (event) => {
    const field = grid.getBoundingClientRect();
    const row = Math.floor((event.clientY - field.top) / field.height * height);
    const column = Math.floor((event.clientX - field.left) / field.width * width);
    if (row < -1 || row > height || column < -1 || column > width) return null;
    return { row: Math.min(Math.max(row, 0), height - 1), column: Math.min(Math.max(column, 0), width - 1) };
  };
  // The end of the nearest of the eight directions: a hand need not be exact.
  const snapped = (from, to) => {
    const down = to.row - from.row;
    const across = to.column - from.column;
    const ways = [Math.abs(across) <= 2 * Math.abs(down) ? Math.sign(down) : 0, Math.abs(down) <= 2 * Math.abs(across) ? Math.sign(across) : 0];
    for (let steps = Math.max(Math.abs(down), Math.abs(across)); steps > 0; --steps) {
      const end = { row: from.row + steps * ways[0], column: from.column + steps * ways[1] };
      if (cells[end.row]?.[end.column]) return end;
    }
    return from;
  };
  // A grid that is larger than its box or the window follows a drag that comes to the edge.
  const follow = (event) => {
    const edge = grid.getBoundingClientRect().width / width;
    const sides = box.getBoundingClientRect();
    if (event.clientX < sides.left + edge) box.scrollLeft -= edge / 2;
    if (event.clientX > sides.right - edge) box.scrollLeft += edge / 2;
    if (event.clientY < edge) window.scrollBy(0, -edge / 2);
    if (event.clientY > window.innerHeight - edge) window.scrollBy(0, edge / 2);
  };
  const letGo = () => {
    press = null;
    showTrail(first, first);
  };
  grid.addEventListener("pointerdown", (event) => {
    pressed = false;
    if (!event.isPrimary) return letGo();
    const cell = placeOf(event.target);
    if (event.button !== 0 || !cell) return;
    press = { pointer: event.pointerId, from: cell, to: cell };
    grid.setPointerCapture(event.pointerId);
  });
  grid.addEventListener("pointermove", (event) => {
    if (press?.pointer !== event.pointerId) return;
    const cell = cellAt(event);
    press.to = cell && snapped(press.from, cell);
    if (!press.to) return showTrail(first, first);
    if (same(press.from, press.to)) return;
    showTrail(press.from, press.to);
    follow(event);
  });
  grid.addEventListener("pointerup", (event) => {
    if (press?.pointer !== event.pointerId) return;
    const { from, to } = press;
    pressed = true;
    letGo();
    if (!to) return tell("Taken back.");
    if (same(from, to)) return choose(from);
    takeBack();
    tryLine(from, to);
  });
  grid.addEventListener("pointercancel", letGo);
  // Some aids press without a pointer.
  grid.addEventListener("click", (event) => {
    const cell = placeOf(event.target);
    if (!pressed && cell) choose(cell);
    pressed = false;
  });

  // ---- Tools

  const switchButton = (button, on) => button.setAttribute("aria-pressed", String(on));
  const isOn = (button) => button.getAttribute("aria-pressed") === "true";
  keyButton?.addEventListener("click", () => {
    const on = !isOn(keyButton);
    switchButton(keyButton, on);
    key.hidden = !on;
    for (const ring of rings.querySelectorAll(".shown")) ring.remove();
    if (!on) return tell("The key is hidden. ", left());
    for (const row of key.querySelectorAll("tbody tr")) {
      const [fromRow, fromColumn, toRow, toColumn] = row.dataset.ends.split(" ").map(Number);
      addRing(words[row.sectionRowIndex], "shown", { row: fromRow, column: fromColumn }, { row: toRow, column: toColumn });
    }
    tell("The key is shown: dashed rings in the grid, and a table of places under it.");
  });
  document.getElementById("again").addEventListener("click", () => {
    takeBack();
    for (const ring of rings.querySelectorAll(".found")) ring.remove();
    for (const word of words) {
      word.found = null;
      word.item.classList.remove("found");
      word.item.querySelector(".state").textContent = "";
    }
    nameCells();
    showCount();
    keep();
    tell("Begun again. ", left());
  });
  moveButton.addEventListener("click", () => {
    const on = !isOn(moveButton);
    switchButton(moveButton, on);
    grid.parentElement.classList.toggle("moving", on);
    tell(on ? "Dragging moves the grid. Mark a word by choosing its two ends." : "Dragging marks words.");
  });
  // Only a finger needs it, and only where there is more than is seen at once.
  const offerMove = () => {
    const large = box.scrollWidth > box.clientWidth || box.offsetHeight > 0.8 * window.innerHeight;
    moveButton.hidden = !isOn(moveButton) && !(large && window.matchMedia("(any-pointer: coarse)").matches);
  };
  document.getElementById("size").addEventListener("input", (event) => {
    root.style.setProperty("--scale", event.target.value);
    offerMove();
  });
  window.addEventListener("resize", offerMove);

  root.style.setProperty("--columns", width);
  root.style.setProperty("--rows", height);
  if (openCells.length > 0) makeCurrent(openCells[0]);
  showCount();
  recall();
  offerMove();
})();
