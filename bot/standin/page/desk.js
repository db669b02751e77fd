// The desk: all phones, the clock, and a loop that asks what is new.

import { Sheet } from "./sheet.js";
import { ask, pause, tell } from "./talk.js";
import { make } from "./words.js";

const at = (id) => document.getElementById(id);
const narrow = matchMedia("(max-width: 43rem)");
const tabs = new Map();

const desk = {
  sheets: new Map(),
  bot: { name: "", username: "" },
  shift: 0,
  zone: "UTC",
  revision: 0,
  chosen: Number(location.hash.slice(1)) || null,

  day(seconds) { return format({ weekday: "long", day: "numeric", month: "long" }, seconds); },
  hour(seconds) { return format({ hour: "2-digit", minute: "2-digit", hourCycle: "h23" }, seconds); },

  isOurLink(address) {
    try {
      const url = new URL(address);
      return url.hostname === "t.me" && url.pathname.slice(1).toLowerCase() === this.bot.username.toLowerCase();
    } catch { return false; }
  },

  openLink(address, from) {
    const people = [...this.sheets.values()].filter((one) => !one.chat.group);
    people.sort((a, b) => (b === from) - (a === from));
    question("Whose phone opens this link?", address, people.map((one) => [one.chat.title, async () => {
      await one.attempt(() => tell(`chats/${one.chat.id}/open`, { link: address }));
      choose(one.chat.id);
    }]));
  },

  say(title, text) { question(title, text, []); },

  looksAt(sheet) {
    for (const one of this.sheets.values()) one.log.setAttribute("aria-live", one === sheet ? "polite" : "off");
  },
};

function format(how, seconds) {
  return new Intl.DateTimeFormat("en-GB", { ...how, timeZone: desk.zone }).format(new Date(seconds * 1000));
}

function question(title, text, choices) {
  const dialog = at("ask");
  at("ask-title").textContent = title;
  at("ask-text").textContent = text;
  at("ask-choices").replaceChildren(...choices.map(([words, act]) => make("button", { type: "button", onclick: () => { dialog.close(); act(); } }, words)));
  dialog.showModal();
}

// --- people, side by side or one at a time

function one() { return narrow.matches || !at("side").checked; }

function arrange() {
  if (!desk.sheets.has(desk.chosen)) desk.chosen = desk.sheets.keys().next().value ?? null;
  at("desk").classList.toggle("one", one());
  for (const [id, sheet] of desk.sheets) {
    sheet.node.hidden = one() && id !== desk.chosen;
    const tab = tabs.get(id);
    tab.setAttribute("aria-pressed", String(one() && id === desk.chosen));
    tab.querySelector(".count").textContent = sheet.chat.unread ? `${sheet.chat.unread} new` : "";
  }
  const shown = one() && desk.sheets.get(desk.chosen);
  if (shown && !document.hidden) shown.look();
}

function choose(id) {
  desk.chosen = id;
  history.replaceState(null, "", `#${id}`);
  arrange();
  const sheet = desk.sheets.get(id);
  sheet.log.scrollTop = sheet.log.scrollHeight;
  sheet.words.focus();
}

function sheetOf(chat) {
  let sheet = desk.sheets.get(chat.id);
  if (sheet) { sheet.take(chat); return sheet; }
  sheet = new Sheet(desk, chat);
  desk.sheets.set(chat.id, sheet);
  at("desk").append(sheet.node);
  const name = chat.group ? chat.title : chat.people[0].name.split(" ")[0];
  const tab = make("button", { type: "button", "aria-pressed": "false", onclick: () => choose(chat.id) }, name, make("span", { class: "count" }));
  tabs.set(chat.id, tab);
  at("people").append(make("li", {}, tab));
  return sheet;
}

// --- the clock

function takeClock(clock) {
  desk.zone = clock.zone;
  desk.shift = clock.now * 1000 - Date.now();
  at("zone").textContent = clock.zone;
  at("moves").hidden = !clock.movable;
  tick();
}

function tick() {
  const seconds = (Date.now() + desk.shift) / 1000;
  const size = narrow.matches ? "short" : "long";
  at("now").textContent = `${format({ weekday: size, day: "numeric", month: size, year: "numeric" }, seconds)}, ${desk.hour(seconds)}`;
}

for (const button of at("moves").querySelectorAll("button")) {
  button.addEventListener("click", async () => {
    button.setAttribute("aria-disabled", "true");
    try {
      takeClock(await tell("clock", { to: button.dataset.to }));
      at("said").textContent = `It is now ${at("now").textContent}`;
    } catch (trouble) { at("trouble").textContent = trouble.message; }
    button.removeAttribute("aria-disabled");
  });
}

// --- what is new

async function afresh() {
  const all = await ask("desk");
  desk.bot = all.bot;
  desk.revision = all.revision;
  takeClock(all.clock);
  for (const chat of all.chats) sheetOf(chat);
  for (const [id, sheet] of desk.sheets) sheet.show(all.messages.filter((item) => item.chat === id));
  arrange();
  for (const sheet of desk.sheets.values()) sheet.log.scrollTop = sheet.log.scrollHeight;
}

function take(news) {
  takeClock(news.clock);
  const hidden = [];
  for (const chat of news.chats) {
    const before = desk.sheets.get(chat.id)?.chat.unread ?? 0;
    const sheet = sheetOf(chat);
    if (chat.unread > before && !sheet.node.contains(document.activeElement)) hidden.push(`${chat.title}: ${chat.unread} new`);
  }
  for (const item of news.messages) desk.sheets.get(item.chat)?.add(item);
  for (const one of news.gone) desk.sheets.get(one.chat)?.gone(one.message_id);
  for (const one of news.answers) desk.sheets.get(one.chat)?.answered(one);
  const wrote = new Set(news.messages.filter((item) => item.from_bot).map((item) => item.chat));
  for (const one of news.actions) if (!wrote.has(one.chat)) desk.sheets.get(one.chat)?.writing(one);
  if (hidden.length) at("said").textContent = hidden.join(". ");
  arrange();
}

async function follow() {
  let begun = false;
  for (;;) {
    try {
      if (!begun) { await afresh(); begun = true; }
      const news = await ask(`changes?since=${desk.revision}&wait=25`);
      desk.revision = news.revision;
      if (news.afresh) begun = false; else take(news);
      at("trouble").textContent = "";
    } catch (trouble) {
      at("trouble").textContent = "The stand-in does not answer. Trying again …";
      begun = false;
      await pause(1500);
    }
  }
}

narrow.addEventListener("change", arrange);
at("side").addEventListener("change", arrange);
document.addEventListener("visibilitychange", arrange);
setInterval(tick, 1000);
follow();
