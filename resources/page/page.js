
"use strict";
(() => {
  const talk = JSON.parse(document.getElementById("talk").textContent);
  const by = (id) => document.getElementById(id);
  const SVG = "http://www.w3.org/2000/svg";
  const NAMES = { p: "pawn", n: "knight", b: "bishop", r: "rook", q: "queen", k: "king" };
  const PLURALS = { p: "pawns", n: "knights", b: "bishops", r: "rooks", q: "queens", k: "kings" };
  const SLIDE = 200, RETURN = 420, FOLLOWABLE = 10;
  const root = document.documentElement;
  const calm = matchMedia("(prefers-reduced-motion: reduce)");
  const wide = matchMedia("(min-width: 46rem)");

  // A shot is [second, kind, position, stop, part, [second, mark]…]; kinds are m(ove), b(ack), c(ard), t(hink).
  const shots = talk.shots;
  if (!shots.length) return;
  const last = shots.length - 1;

  // ---- positions ------------------------------------------------------------------------------------------

  // A position is an array of 64 letters as in FEN, "" for an empty square, a1 first.
  const square = (name) => name.charCodeAt(0) - 97 + 8 * (name.charCodeAt(1) - 49);
  const squareName = (at) => "abcdefgh"[at % 8] + (1 + (at >> 3));
  const isWhite = (piece) => piece !== piece.toLowerCase();

  function fromFen(placement) {
    const board = new Array(64).fill("");
    placement.split("/").forEach((row, index) => {
      let at = 8 * (7 - index);
      for (const sign of row) {
        if (/\d/.test(sign)) at += Number(sign);
        else board[at++] = sign;
      }
    });
    return board;
  }

  const moves = talk.moves.map(([parent, code]) => {
    const found = /^((?:[a-h][1-8][a-h][1-8],?)*)(?:x([a-h][1-8]))?(?:=([QRBN]))?([+#]?)$/.exec(code);
    const slides = (found[1] ? found[1].split(",") : []).map((pair) => [square(pair), square(pair.slice(2))]);
    return { parent, slides, passing: found[2] ? square(found[2]) : -1, becomes: found[3] || "", sign: found[4] };
  });
  const boards = [];
  moves.forEach((move, index) => {
    if (move.parent < 0) {
      boards.push(fromFen(talk.position));
      move.white = !talk.white;
      move.ply = 0;
      return;
    }
    const before = moves[move.parent];
    move.white = !before.white;
    move.ply = before.ply + 1;
    const board = boards[move.parent].slice();
    const pieces = move.slides.map(([from]) => board[from]);
    move.piece = pieces[0] || "";
    move.castles = move.slides.length === 2;
    move.takes = "";
    if (!move.castles && move.slides.length) {
      const where = move.passing >= 0 ? move.passing : move.slides[0][1];
      move.takes = board[where];
      board[where] = "";
    }
    move.slides.forEach(([from]) => { board[from] = ""; });
    move.slides.forEach(([, to], place) => { board[to] = pieces[place]; });
    if (move.becomes) board[move.slides[0][1]] = move.white ? move.becomes : move.becomes.toLowerCase();
    boards[index] = board;
  });

  // ---- words for those who hear the page --------------------------------------------------------------------

  function moveInWords(move) {
    const side = move.white ? "white" : "black";
    if (!move.slides.length) return `${side} passes the turn`;
    const [from, to] = move.slides[0].map(squareName);
    let said = `${side} ${NAMES[move.piece.toLowerCase()]} from ${from}`;
    if (move.castles) said = `${side} castles ${move.slides[0][1] % 8 > 3 ? "kingside" : "queenside"}`;
    else if (move.passing >= 0) said += ` takes the pawn in passing, to ${to}`;
    else if (move.takes) said += ` takes the ${NAMES[move.takes.toLowerCase()]} on ${to}`;
    else said += ` to ${to}`;
    if (move.becomes) said += `, promotes to a ${NAMES[move.becomes.toLowerCase()]}`;
    return said + (move.sign === "#" ? ", checkmate" : move.sign === "+" ? ", check" : "");
  }

  const listed = (names) => names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;

  function sideInWords(board, white) {
    const groups = [];
    for (const kind of "kqrbnp") {
      const names = [];
      board.forEach((piece, at) => {
        if (piece && isWhite(piece) === white && piece.toLowerCase() === kind) names.push(squareName(at));
      });
      if (names.length) groups.push(`${(names.length > 1 ? PLURALS : NAMES)[kind]} ${listed(names.sort())}`);
    }
    return `${white ? "White" : "Black"}: ${groups.join(", ") || "no pieces"}.`;
  }

  function positionInWords(index) {
    const board = boards[index], move = moves[index], turn = move.white ? "Black" : "White";
    const whose = move.sign === "#" ? `${turn} is checkmated.` : `${turn} to move${move.sign ? ", in check" : ""}.`;
    return [sideInWords(board, true), sideInWords(board, false), whose].join(" ");
  }

  // ---- what the article knows of each shot ------------------------------------------------------------------

  const anchors = shots.map((_, number) => by(`a${number}`));
  const stops = new Map();
  for (const [, , , stop] of shots) if (!stops.has(stop)) stops.set(stop, by(`s${stop}`));
  const lineNames = new Map();
  {
    // A side-line that goes on after one inside it has no heading of its own: it is the last one of its depth.
    const open = [];
    for (const line of document.querySelectorAll(".aside")) {
      const depth = Number(/depth-(\d)/.exec(line.className)[1]);
      const label = line.querySelector("h2 .label"), title = line.querySelector("h2 bdi");
      if (label) open[depth] = { label: label.textContent, title: title.textContent };
      lineNames.set(line, open[depth] || { label: "Side-line", title: "" });
    }
  }
  const figurines = [], lineAt = [];
  shots.forEach(([, kind, position], number) => {
    if (kind === "m" && anchors[number] && figurines[position] === undefined) {
      figurines[position] = anchors[number].textContent.replace(/^\d+(?:\.|…)\s*/, "");
      lineAt[position] = anchors[number].closest(".aside");
    }
  });
  // The side-line that the board is in, null in the game: a return into the game may stand where a side-line is told.
  const lineOf = (number) => lineAt[shots[number][2]] || null;
  const nameOf = (number) => lineNames.get(lineOf(number))?.label || "";

  function label(position) {
    const move = moves[position];
    if (move.parent < 0) return "The start position";
    const halfMove = 2 * talk.number - 2 + (talk.white ? 0 : 1) + move.ply;
    return `${(halfMove + 1) >> 1}${move.white ? "." : "…"} ${figurines[position] || ""}`;
  }

  const details = [...document.querySelectorAll("details.part")];
  let reached = 0;
  let index = -1;

  // ---- drawing ----------------------------------------------------------------------------------------------

  const stage = by("stage"), picture = by("board-now");
  const layers = { under: by("under"), signs: by("signs"), pieces: by("pieces"), over: by("over") };
  let turned = false;
  let drawn = [];
  const ground = new Set(talk.ground);

  function use(name, x = 0, y = 0) {
    const element = document.createElementNS(SVG, "use");
    element.setAttribute("href", `#${name}`);
    if (x || y) element.setAttribute("transform", `translate(${x} ${y})`);
    return element;
  }

  const corner = (at) => turned ? [100 * (7 - at % 8), 100 * (at >> 3)] : [100 * (at % 8), 100 * (7 - (at >> 3))];
  const pieceName = (piece) => (isWhite(piece) ? "w" : "b") + piece.toUpperCase();

  function changes(before, after, move) {
    // Which pieces slide from where to where; equal pieces go to the nearest place where no move says it.
    if (move) return move.slides.map(([from, to]) => [from, to]);
    const leaving = [], arriving = [];
    for (let at = 0; at < 64; at++) {
      if (before[at] === after[at]) continue;
      if (before[at]) leaving.push(at);
      if (after[at]) arriving.push(at);
    }
    const pairs = [];
    for (const from of leaving) for (const to of arriving) {
      if (before[from] !== after[to]) continue;
      const across = Math.abs(from % 8 - to % 8), along = Math.abs((from >> 3) - (to >> 3));
      pairs.push([(before[from].toLowerCase() === "p" ? 8 : 1) * across + along, from, to]);
    }
    pairs.sort((one, other) => one[0] - other[0] || one[1] - other[1] || one[2] - other[2]);
    const from = new Set(), to = new Set(), slides = [];
    for (const [, origin, target] of pairs) {
      if (from.has(origin) || to.has(target)) continue;
      from.add(origin); to.add(target); slides.push([origin, target]);
    }
    return slides.length > FOLLOWABLE ? [] : slides;
  }

  function drawPieces(position, before, move, time) {
    const board = boards[position];
    const origin = new Map();
    let leaving = [];
    if (time && before >= 0 && before !== position) {
      const slides = changes(boards[before], board, move);
      for (const [from, to] of slides) origin.set(to, from);
      const gone = new Set(slides.map(([from]) => from));
      leaving = boards[before].map((piece, at) => [piece, at])
        .filter(([piece, at]) => piece && !gone.has(at) && piece !== board[at]);
    }
    const still = [], moving = [], ghosts = [];
    const order = [...board.keys()].sort((one, other) => corner(one)[1] - corner(other)[1] || corner(one)[0] - corner(other)[0]);
    for (const at of order) {
      if (!board[at]) continue;
      const [x, y] = corner(at);
      const element = use(pieceName(board[at]), x, y);
      if (origin.has(at)) {
        const [fromX, fromY] = corner(origin.get(at));
        element.animate(
          [{ transform: `translate(${fromX}px, ${fromY}px)` }, { transform: `translate(${x}px, ${y}px)` }],
          { duration: time, easing: "cubic-bezier(.65, 0, .35, 1)" });
        moving.push(element);
      } else {
        if (time && before >= 0 && boards[before][at] !== board[at]) element.animate([{ opacity: 0 }, { opacity: 1 }], { duration: time });
        still.push(element);
      }
    }
    for (const [piece, at] of leaving) {
      const element = use(pieceName(piece), ...corner(at));
      element.animate([{ opacity: 1 }, { opacity: 0 }], { duration: time, fill: "forwards" }).onfinish = () => element.remove();
      ghosts.push(element);
    }
    layers.pieces.replaceChildren(...ghosts, ...still, ...moving);
  }

  function drawSigns(position) {
    const move = moves[position], signs = [];
    if (move.parent >= 0 && move.slides.length) {
      const [from, to] = move.slides[0];
      signs.push(use("left", ...corner(from)), use("reached", ...corner(to)));
    }
    if (move.sign) {
      const king = boards[position].indexOf(move.white ? "k" : "K");
      if (king >= 0) signs.push(use("check", ...corner(king)));
    }
    layers.signs.replaceChildren(...signs);
  }

  function drawMarks(numbers) {
    if (numbers.length === drawn.length && numbers.every((number, at) => number === drawn[at])) return;
    const fresh = numbers.filter((number) => !drawn.includes(number));
    drawn = numbers;
    const over = numbers.map((number) => {
      const element = use(`mark-${number}`);
      if (!calm.matches && fresh.includes(number)) element.animate([{ opacity: 0 }, { opacity: 1 }], { duration: SLIDE });
      return element;
    });
    layers.over.replaceChildren(...over);
    layers.under.replaceChildren(...numbers.filter((number) => ground.has(number)).map((number) => use(`under-${number}`)));
    for (const layer of [layers.over, layers.under]) {
      if (turned) layer.setAttribute("transform", "rotate(180 400 400)");
      else layer.removeAttribute("transform");
    }
  }

  const marksOf = (number, until = Infinity) =>
    [...new Set(shots[number].slice(5).filter(([when]) => when <= until).map(([, mark]) => mark))];

  // ---- going from shot to shot ------------------------------------------------------------------------------

  const place = by("place"), said = by("said");
  place.max = String(last);
  const lanes = by("lanes"), scroll = lanes.querySelector(".scroll");
  const laneLinks = new Map();
  const tagged = [...lanes.querySelectorAll("td[data-part]")];
  for (const link of lanes.querySelectorAll("td a")) laneLinks.set(shots[Number(link.hash.slice(2))][2], link);

  function reach(part) {
    if (part <= reached) return;
    reached = part;
    for (const one of details) if (Number(one.dataset.part) <= reached) one.open = true;
    for (const cell of tagged) cell.classList.toggle("asked-first", Number(cell.dataset.part) > reached);
    for (const row of lanes.querySelectorAll("tbody tr")) {
      row.classList.toggle("asked-first", ![...row.querySelectorAll("td")].some(
        (cell) => cell.firstElementChild && !cell.classList.contains("asked-first")));
    }
  }

  function whereWords(number) {
    const [, kind, position] = shots[number];
    const name = nameOf(number), title = lineNames.get(lineOf(number))?.title;
    if (kind === "t") return `${moves[position].white ? "Black" : "White"} to move: find the move`;
    if (kind === "b") {
      if (name === nameOf(Math.max(0, number - 1))) return "Stepping back";
      return name ? `Back in ${name.replace("Side", "side")}` : "Back in the game";
    }
    return title && !title.includes(figurines[position]) ? `${name} · ${title}` : name;
  }

  function announcement(number) {
    const [, kind, position] = shots[number];
    const move = moves[position], marks = marksOf(number).map((mark) => talk.marks[mark]);
    const words = move.parent < 0 ? "the start position" : `${label(position).split(" ")[0]} ${moveInWords(move)}`;
    const where = whereWords(number);
    if (kind === "t") return `${where}.`;
    if (kind === "b") return `${where}, after ${words}.`;
    return [where && `${where}:`, `${words}.`, ...marks].filter(Boolean).join(" ");
  }

  function show(number, { animate = true, follow = true, until = Infinity, speak = true } = {}) {
    const before = index >= 0 ? shots[index][2] : -1;
    const [, kind, position, stop, part] = shots[number];
    const elsewhere = position !== before;
    const left = index >= 0 ? nameOf(index) : "";
    index = number;
    reach(part);
    const move = moves[position];
    const onwards = elsewhere && move.parent === before;
    const time = !animate || calm.matches ? 0 : onwards ? SLIDE : RETURN;
    if (elsewhere) {
      const back = before >= 0 && moves[before].parent === position;
      const way = onwards ? move : back ? { slides: moves[before].slides.map(([a, b]) => [b, a]) } : null;
      drawPieces(position, before, way, time);
      drawSigns(position);
      picture.setAttribute("aria-label", `Board. ${positionInWords(position)}`);
    }
    drawMarks(marksOf(number, until));
    const line = lineOf(number);
    stage.classList.toggle("in-side-line", Boolean(line) && kind !== "t");
    stage.classList.toggle("asking", kind === "t");
    if (kind === "b" && left && left !== nameOf(number) && time) unwind();
    by("now-move").textContent = label(position);
    by("now-where").textContent = whereWords(number);
    place.value = String(number);
    place.setAttribute("aria-valuetext", label(position));
    // Not disabled: a button that loses the focus leaves whoever steps with the keyboard nowhere.
    for (const id of ["first", "back"]) by(id).setAttribute("aria-disabled", String(number === 0));
    for (const id of ["on", "last"]) by(id).setAttribute("aria-disabled", String(number === last));
    choose(number, stop);
    showLane(position);
    tellTime();
    if (follow) keepInView(stop, number);
    if (speak) announce(announcement(number));
    rememberPlace(number);
  }

  function unwind() {
    const frame = by("line-frame");
    const style = getComputedStyle(root).getPropertyValue("--side-line");
    frame.animate(
      [{ stroke: style, strokeDasharray: "100 0" }, { stroke: style, strokeDasharray: "0 100" }],
      { duration: RETURN, easing: "ease-in-out" });
  }

  let chosen = {};
  function choose(number, stop) {
    if (chosen.stop) chosen.stop.classList.remove("now");
    if (chosen.link) chosen.link.removeAttribute("aria-current");
    let at = number;
    while (at > 0 && !anchors[at] && shots[at - 1][2] === shots[number][2]) at--;
    chosen = { stop: stops.get(stop), link: anchors[at] };
    if (chosen.stop) chosen.stop.classList.add("now");
    if (chosen.link) chosen.link.setAttribute("aria-current", "step");
  }

  let lit = [];
  function showLane(position) {
    for (const link of lit) { link.classList.remove("on-the-way"); link.removeAttribute("aria-current"); }
    lit = [];
    for (let at = position; at >= 0; at = moves[at].parent) {
      const link = laneLinks.get(at);
      if (link) { link.classList.add("on-the-way"); lit.push(link); }
    }
    const link = laneLinks.get(position);
    if (!link) { scroll.scrollTop = 0; scroll.scrollLeft = 0; return; }
    link.setAttribute("aria-current", "step");
    const room = scroll.getBoundingClientRect(), here = link.getBoundingClientRect();
    if (here.top < room.top + 40 || here.bottom > room.bottom - 30) scroll.scrollTop += here.top - room.top - room.height * 0.45;
    const right = here.right - room.left + scroll.scrollLeft + 12;
    // No further to the right than it takes to see the move, so that the game stays in sight where it can.
    scroll.scrollLeft = Math.max(0, right - scroll.clientWidth);
  }

  function keepInView(stop, number) {
    const element = anchors[number] || stops.get(stop);
    if (!element) return;
    const here = element.getBoundingClientRect();
    const top = wide.matches ? 90 : covered();
    const bottom = innerHeight - 90;
    if (here.top >= top && here.bottom <= bottom) return;
    const wanted = wide.matches ? innerHeight * 0.3 : top;
    scrollBy({ top: here.top - wanted, behavior: calm.matches ? "instant" : "smooth" });
  }

  // How much of the window the board covers from above where it stands over the text.
  const covered = () => getComputedStyle(stage).position === "sticky" ? stage.offsetHeight + 12 : 0;

  function keepFree() {
    // Where the browser itself goes to a place in the text, the board does not hide it either.
    root.style.setProperty("--stage", `${stage.offsetHeight}px`);
    root.style.scrollPaddingTop = wide.matches ? "30vh" : `${covered()}px`;
  }

  let speaking = 0;
  function announce(words) {
    clearTimeout(speaking);
    // Whoever holds a key down hears where they end.
    speaking = setTimeout(() => { said.textContent = words; }, 150);
  }

  let remembering = 0;
  function rememberPlace(number) {
    clearTimeout(remembering);
    remembering = setTimeout(() => {
      let at = number;
      while (at > 0 && !anchors[at]) at--;
      try { history.replaceState(null, "", anchors[at] ? `#a${at}` : location.pathname + location.search); } catch { /* a page inside another one */ }
    }, 400);
  }

  // ---- time -------------------------------------------------------------------------------------------------

  let media = by("media");
  let playing = false, now = 0, before = 0;

  const clockTime = (seconds) => `${Math.floor(seconds / 60)}:${String(Math.floor(seconds % 60)).padStart(2, "0")}`;
  const seconds = () => media ? media.currentTime : now;

  function tellTime() {
    const at = playing || media ? seconds() : shots[index][0];
    by("clock").textContent = `${clockTime(at)} / ${clockTime(talk.length)}`;
  }

  function shotAt(time) {
    let low = 0, high = last;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (shots[middle][0] <= time) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  function go(number, options) {
    const target = Math.max(0, Math.min(last, number));
    now = shots[target][0];
    if (media) seek(now);
    show(target, options);
  }

  let seekingTo = -1;
  function seek(time) {
    // A hair later, so that rounding cannot land before the shot.
    seekingTo = Math.min(time + 0.002, Number.isFinite(media.duration) ? media.duration : time + 0.002);
    if (media.readyState > 0) media.currentTime = seekingTo;
  }

  function setPlaying(value) {
    playing = value;
    stage.classList.toggle("playing", value);
    by("play").setAttribute("aria-label", value ? "Stop" : "Play");
    if (value) { before = performance.now(); requestAnimationFrame(tick); }
  }

  function follow() {
    const time = seconds();
    const number = shotAt(time);
    if (number !== index) show(number, { until: time, speak: !media });
    else { drawMarks(marksOf(number, time)); tellTime(); }
  }

  function tick(at) {
    if (!playing) return;
    if (!media) {
      now += Math.max(0, at - before) / 1000;
      before = at;
      if (now >= talk.length) { now = talk.length; follow(); setPlaying(false); return; }
    }
    follow();
    requestAnimationFrame(tick);
  }

  function play() {
    if (media) {
      if (media.paused) media.play().catch(() => setPlaying(false));
      else media.pause();
      return;
    }
    if (!playing && index === last && now >= talk.length - 0.01) go(0);
    setPlaying(!playing);
  }

  if (media) {
    media.addEventListener("play", () => setPlaying(true));
    media.addEventListener("pause", () => setPlaying(false));
    media.addEventListener("ended", () => setPlaying(false));
    media.addEventListener("error", silent);
    media.addEventListener("loadedmetadata", () => { if (seekingTo > 0.01) media.currentTime = seekingTo; });
    media.addEventListener("seeked", () => {
      if (!media) return;
      const own = Math.abs(media.currentTime - seekingTo) < 0.05;
      seekingTo = -1;
      if (!own) follow();
      else tellTime();
    });
    if (media.error) silent();
  }

  function silent() {
    // Nothing can be heard: the talk goes on by its own clock.
    media.closest("figure").hidden = true;
    media = null;
    setPlaying(false);
  }

  const step = (by_) => { go(index + by_); };

  // ---- hands ------------------------------------------------------------------------------------------------

  by("first").addEventListener("click", () => go(0));
  by("back").addEventListener("click", () => step(-1));
  by("on").addEventListener("click", () => step(1));
  by("last").addEventListener("click", () => go(last));
  by("play").addEventListener("click", play);
  place.addEventListener("input", () => go(Number(place.value), { animate: false }));

  function turn() {
    turned = !turned;
    by("turn").setAttribute("aria-pressed", String(turned));
    by("names-now").setAttribute("href", turned ? "#names-turned" : "#names");
    picture.style.setProperty("--turned", turned ? "180deg" : "0deg");
    drawn = [];
    drawPieces(shots[index][2], -1, null, 0);
    drawSigns(shots[index][2]);
    drawMarks(marksOf(index, playing ? seconds() : Infinity));
  }
  by("turn").addEventListener("click", turn);

  document.addEventListener("click", (event) => {
    const link = event.target.closest("a[href^='#a']");
    if (link) {
      const number = Number(link.hash.slice(2));
      if (!(number in shots)) return;
      event.preventDefault();
      go(number, { follow: Boolean(link.closest("#lanes")) });
      return;
    }
    const stop = event.target.closest(".stop");
    if (stop && String(getSelection()) === "") {
      const number = shots.findIndex((shot) => shot[3] === Number(stop.id.slice(1)));
      if (number >= 0) go(number, { follow: false });
    }
  });

  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey || event.defaultPrevented) return;
    const target = event.target;
    if (target.closest("input, audio, video, [contenteditable]") && target !== place) return;
    const scrolled = target === scroll && scroll.scrollWidth > scroll.clientWidth;
    const keys = { ArrowRight: () => step(1), ArrowLeft: () => step(-1), Home: () => go(0), End: () => go(last), f: turn, F: turn };
    const action = event.key === " " ? (target.closest("button, summary") ? null : play) : keys[event.key];
    if (!action || (scrolled && event.key.startsWith("Arrow"))) return;
    event.preventDefault();
    action();
  });

  let touch = null;
  picture.addEventListener("pointerdown", (event) => { touch = event.isPrimary ? { id: event.pointerId, x: event.clientX, y: event.clientY } : null; });
  picture.addEventListener("pointercancel", () => { touch = null; });
  picture.addEventListener("pointerup", (event) => {
    if (!touch || touch.id !== event.pointerId || event.button > 0) return;
    const across = event.clientX - touch.x, along = event.clientY - touch.y;
    touch = null;
    if (Math.abs(across) > 30 && Math.abs(across) > 1.5 * Math.abs(along)) { step(across < 0 ? 1 : -1); return; }
    if (Math.hypot(across, along) > 10) return;
    const room = picture.getBoundingClientRect();
    step(event.clientX < room.left + room.width / 3 ? -1 : 1);
  });

  let printed = [];
  for (const one of details) {
    one.addEventListener("toggle", () => { if (one.open && !printed.includes(one)) reach(Number(one.dataset.part)); });
  }
  addEventListener("hashchange", () => {
    const number = Number(location.hash.slice(2));
    if (location.hash.startsWith("#a") && number in shots && number !== index) go(number);
  });
  addEventListener("beforeprint", () => {
    printed = details.filter((one) => !one.open);
    for (const one of printed) one.open = true;
  });
  addEventListener("afterprint", () => {
    for (const one of printed) one.open = false;
    printed = [];
  });

  // ---- light and dark ---------------------------------------------------------------------------------------

  const theme = by("theme"), dark = matchMedia("(prefers-color-scheme: dark)");
  const isDark = () => root.dataset.theme ? root.dataset.theme === "dark" : dark.matches;
  const nameTheme = () => { theme.textContent = isDark() ? "Light" : "Dark"; theme.title = isDark() ? "To light colours" : "To dark colours"; };
  try { const kept = localStorage.getItem("theme"); if (kept === "dark" || kept === "light") root.dataset.theme = kept; } catch { /* not allowed here */ }
  theme.addEventListener("click", () => {
    root.dataset.theme = isDark() ? "light" : "dark";
    try { localStorage.setItem("theme", root.dataset.theme); } catch { /* not allowed here */ }
    nameTheme();
  });
  dark.addEventListener("change", nameTheme);
  nameTheme();

  // ---- begin ------------------------------------------------------------------------------------------------

  root.classList.add("live");
  for (const element of [stage, theme, by("help")]) element.hidden = false;
  lanes.open = wide.matches;
  wide.addEventListener("change", () => { lanes.open = wide.matches; });
  reached = -1;
  keepFree();
  addEventListener("resize", keepFree);
  if (talk.turned) turned = true;
  const asked = location.hash.startsWith("#a") ? Number(location.hash.slice(2)) : 0;
  go(asked in shots ? asked : 0, { animate: false, follow: asked > 0 });
  said.textContent = "";
  clearTimeout(speaking);
  if (talk.turned) { turned = false; turn(); }
})();
