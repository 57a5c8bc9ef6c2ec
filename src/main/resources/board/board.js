"use strict";
// Keeps a page of the board up to date, and shows what a table would do before it is stored. Reading needs none of it.
(() => {
  const byId = (id) => document.getElementById(id);
  const live = byId("live");

  // Times stand on the page in UTC; readers see them in their own zone.
  const two = (number) => String(number).padStart(2, "0");
  function localTimes(root) {
    for (const time of root.querySelectorAll("time")) {
      const at = new Date(time.dateTime);
      time.title = time.dateTime;
      time.textContent = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} `
        + `${two(at.getHours())}:${two(at.getMinutes())}`;
    }
  }

  // The service says that something changed; the page is asked for again and its fresh part put in place.
  let asking = false;
  let again = false;
  async function refresh() {
    if (asking) {
      again = true;
      return;
    }
    asking = true;
    try {
      const answer = await fetch(location.pathname + location.search, {headers: {Accept: "text/html"}});
      if (answer.ok) {
        put(new DOMParser().parseFromString(await answer.text(), "text/html").getElementById("fresh"));
      }
    } catch (broken) {
      say(false);
    } finally {
      asking = false;
      if (again) {
        again = false;
        refresh();
      }
    }
  }

  function put(fresh) {
    const old = byId("fresh");
    if (!fresh || !old || fresh.dataset.state === old.dataset.state) {
      return;
    }
    const focused = old.contains(document.activeElement) ? document.activeElement.getAttribute("href") : null;
    localTimes(fresh);
    const shown = old.querySelector(".samples") && fresh.querySelector(".samples") ? putLines(old, fresh)
      : putWhole(old, fresh);
    if (focused !== null && document.activeElement === document.body) {
      shown.querySelector(`a[href="${CSS.escape(focused)}"]`)?.focus({preventScroll: true});
    }
    document.dispatchEvent(new CustomEvent("board-refreshed"));
  }

  function putWhole(old, fresh) {
    const open = old.querySelector("details")?.open;
    old.replaceWith(document.adoptNode(fresh));
    if (open) {
      fresh.querySelector("details").open = true;
    }
    return fresh;
  }

  /** Only lines that changed are touched: the others need not be laid out again, and what is selected stays so. */
  function putLines(old, fresh) {
    const table = old.querySelector(".samples");
    const key = (line) => `${line.id} ${line.dataset.state}`;
    const lines = [...fresh.querySelectorAll("tbody[id]")];
    const wanted = new Set(lines.map(key));
    const kept = new Map();
    for (const line of [...table.tBodies]) {
      if (wanted.has(key(line))) {
        kept.set(key(line), line);
      } else {
        line.remove();
      }
    }
    let place = table.tBodies[0] ?? null;
    for (const line of lines) {
      const before = kept.get(key(line));
      if (before && before === place) {
        place = place.nextElementSibling;
      } else if (before) {
        table.insertBefore(before, place);
      } else {
        line.classList.add("fresh");
        setTimeout(() => line.classList.remove("fresh"), 4000);
        table.insertBefore(document.adoptNode(line), place);
      }
    }
    old.querySelector(".turn").replaceWith(document.adoptNode(fresh.querySelector(".turn")));
    old.dataset.state = fresh.dataset.state;
    return old;
  }

  function say(isLive) {
    live.dataset.live = isLive ? "yes" : "no";
    live.textContent = isLive ? "live" : "not live; reload to see changes";
  }

  // A browser keeps few connections to one service: only a page that is looked at holds a stream open.
  let source = null;
  function listen() {
    if (source !== null || document.visibilityState !== "visible") {
      return;
    }
    source = new EventSource("/v1/events");
    // what changed while nobody listened is asked for once
    source.onopen = () => {
      say(true);
      refresh();
    };
    source.onerror = () => say(false);
    const types = ["sample.changed", "spots.imported", "spot.corrected", "spot.withdrawn", "alloy.changed",
      "interpretation.stored", "interpretation.stale", "stream.reset"];
    for (const type of types) {
      source.addEventListener(type, (event) => {
        const mine = byId("fresh").dataset.sample;
        const what = JSON.parse(event.data);
        if (!mine || !what.sample || what.sample === mine) {
          refresh();
        }
      });
    }
  }

  function rest() {
    source?.close();
    source = null;
  }

  // A table on its way in.
  const form = byId("upload-form");
  const status = byId("upload-status");
  const shown = byId("upload-answer");
  const MEDIA = {json: "application/json", ndjson: "application/x-ndjson"};
  let file = null;
  let seen = null;

  function element(name, text, parent) {
    const made = document.createElement(name);
    made.textContent = text;
    parent.append(made);
    return made;
  }

  function take(given) {
    file = given;
    byId("file-name").textContent = `${file.name}, ${(file.size / 1024).toFixed(1)} kB`;
    form.hidden = false;
    forget("");
    const name = form.elements.sample;
    if (name.type !== "hidden" && !name.value) {
      name.value = file.name.replace(/\.[^.]*$/, "").replace(/[^A-Za-z0-9._-]+/g, "-").replace(/^-+|-+$/g, "")
        .slice(0, 64);
    }
    if (name.type === "hidden") {
      preview();
    } else {
      form.elements.alloy.focus();
    }
  }

  function forget(text) {
    seen = null;
    byId("store").disabled = true;
    shown.replaceChildren();
    status.textContent = text;
  }

  function value(name) {
    return form.elements[name] ? form.elements[name].value.trim() : "";
  }

  /** What the form says of a sample that is not on record, as the body of a request. */
  function sample() {
    const body = {};
    if (value("nominal")) {
      const elements = {};
      for (const part of value("nominal").split(/[,;]\s*(?=[A-Za-z])/)) {
        const [symbol, share] = part.split(":").map((word) => word.trim());
        elements[symbol] = /^[0-9.]+$/.test(share) ? Number(share) : share;
      }
      body.nominal = {unit: value("nominal_unit"), elements};
    } else {
      body.alloy = value("alloy");
    }
    if (value("beam_energy_kev")) {
      body.beam_energy_kev = Number(value("beam_energy_kev").replace(",", "."));
    }
    body.accuracy_class = value("accuracy_class");
    return body;
  }

  function ask(address, query, headers) {
    const words = new URLSearchParams(Object.entries(query).filter(([, word]) => word));
    const media = MEDIA[file.name.split(".").pop().toLowerCase()] || "text/csv";
    return fetch(address + (String(words) ? `?${words}` : ""), {method: "POST", body: file, headers: {"Content-Type": media,
      "Content-Disposition": `attachment; filename="${file.name.replace(/[^A-Za-z0-9._ -]/g, "_")}"`, ...headers}});
  }

  async function preview() {
    forget("Reading\u2026");
    const name = value("sample");
    const query = {unit: value("unit"), numbers: new URLSearchParams(location.search).get("numbers")};
    if (form.elements.alloy) {
      Object.assign(query, {accuracy_class: value("accuracy_class"),
        beam_energy_kev: value("beam_energy_kev").replace(",", ".")});
      if (value("nominal")) {
        query.nominal = `${value("nominal")} ${value("nominal_unit")}`;
      } else {
        query.alloy = value("alloy");
      }
    }
    try {
      const answer = await ask(`/samples/${name}/preview`, query, {Accept: "text/html, application/problem+json"});
      if (!answer.ok) {
        await refused(answer);
        return;
      }
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      shown.replaceChildren(...[...page.getElementById("content").children].map((part) => document.adoptNode(part)));
      const said = shown.querySelector(".preview");
      seen = {name, isNew: said.dataset.new === "true"};
      byId("store").disabled = said.dataset.accepted === "0";
      status.textContent = said.dataset.accepted === "0" ? "Every spot of it is on record already."
        : "Below is what it would show. Nothing is stored yet.";
      shown.focus({preventScroll: true});
    } catch (broken) {
      status.textContent = "The service could not be reached.";
    }
  }

  async function store() {
    const {name, isNew} = seen;
    byId("store").disabled = true;
    status.textContent = "Storing\u2026";
    try {
      if (isNew) {
        const made = await fetch(`/v1/samples/${name}`, {method: "PUT", body: JSON.stringify(sample()),
          headers: {"Content-Type": "application/json", "If-None-Match": "*"}});
        if (!made.ok) {
          await refused(made);
          return;
        }
      }
      const key = [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16)).join("-");
      const stored = await ask(`/v1/samples/${name}/spots`, {unit: value("unit")}, {"Idempotency-Key": key});
      if (!stored.ok) {
        await refused(stored);
        return;
      }
      location.assign(`/samples/${name}${location.search.match(/[?&]numbers=\w+/)?.[0].replace("&", "?") || ""}`);
    } catch (broken) {
      status.textContent = "The service could not be reached; nothing is known of what was stored.";
    }
  }

  /** Shows a refusal: what was expected, what came, where. */
  async function refused(answer) {
    status.textContent = "";
    shown.replaceChildren();
    const type = answer.headers.get("Content-Type") || "";
    if (!type.includes("json")) {
      element("p", `The service answered ${answer.status}.`, shown).className = "refused";
      return;
    }
    const problem = await answer.json();
    element("h2", problem.title, shown);
    element("p", problem.detail, shown).className = "refused";
    if (problem.errors?.length) {
      const table = element("table", "", shown);
      table.className = "faults";
      const head = element("tr", "", element("thead", "", table));
      ["line", "column", "value", "what is wrong"].forEach((word) => element("th", word, head).scope = "col");
      const body = element("tbody", "", table);
      for (const fault of problem.errors) {
        const row = element("tr", "", body);
        element("td", fault.line ?? fault.pointer ?? "", row);
        element("td", fault.column_name ?? fault.column ?? "", row);
        element("td", fault.value ?? "", row);
        element("td", fault.detail, row);
      }
    }
    shown.focus();
  }

  function close() {
    file = null;
    form.hidden = true;
    byId("table-file").value = "";
    forget("");
    byId("table-file").focus();
  }

  function uploads() {
    byId("upload").hidden = false;
    byId("table-file").addEventListener("change", (event) => event.target.files[0] && take(event.target.files[0]));
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      preview();
    });
    form.addEventListener("input", () => seen && forget("Changed; show the answer again."));
    byId("store").addEventListener("click", store);
    byId("close").addEventListener("click", close);
    document.addEventListener("keydown", (event) => event.key === "Escape" && !form.hidden && close());
    const carriesFile = (event) => [...event.dataTransfer.types].includes("Files");
    let depth = 0;
    const over = (step) => {
      depth = step === 0 ? 0 : depth + step;
      document.body.classList.toggle("over", depth > 0);
    };
    document.addEventListener("dragenter", (event) => carriesFile(event) && over(1));
    document.addEventListener("dragleave", (event) => carriesFile(event) && over(-1));
    document.addEventListener("dragover", (event) => carriesFile(event) && event.preventDefault());
    document.addEventListener("drop", (event) => {
      if (carriesFile(event)) {
        event.preventDefault();
        over(0);
        if (event.dataTransfer.files[0]) {
          take(event.dataTransfer.files[0]);
        }
      }
    });
  }

  localTimes(document);
  if (byId("upload")) {
    uploads();
  }
  if (byId("fresh")) {
    listen();
    document.addEventListener("visibilitychange", () => document.visibilityState === "visible" ? listen() : rest());
    window.addEventListener("pagehide", rest);
    window.addEventListener("pageshow", listen);
  }
})();
