// Finds the one thing on the page that has a role and an accessible name, as someone who listens would ask for it.
// `around` are the names of what it stands in, outermost first. Throws with what there is where nothing or several things fit.
(role, name, around) => {
  const ROLES = {
    button: "button:not([role]), summary, [role=button], input[type=button], input[type=submit]",
    link: "a[href]",
    tab: "[role=tab]",
    field: "input:not([type=checkbox], [type=radio], [type=file], [type=button], [type=submit]), textarea, select",
    checkbox: "input[type=checkbox]",
    group: "[role=group], [role=note], section, nav, main, header, fieldset, figure, li, table, tr, details, [aria-live]",
    heading: "h1, h2, h3, h4",
  };
  const plain = (text) => text.replace(/\s+/g, " ").trim();
  /** What is read of a node and of all that is in it. */
  const read = (node) => {
    if (node.nodeType === Node.TEXT_NODE) return node.data;
    if (node.nodeType !== Node.ELEMENT_NODE || node.hidden || node.getAttribute("aria-hidden") === "true") return "";
    if (node.matches("select, textarea, input, svg, script")) return "";
    return node.getAttribute("aria-label") ?? [...node.childNodes].map(read).join(" ");
  };
  const named = (one) => {
    const by = one.getAttribute("aria-labelledby")?.split(/\s+/).map((id) => document.getElementById(id)).filter(Boolean);
    if (by?.length) return plain(by.map(read).join(" "));
    if (one.hasAttribute("aria-label")) return plain(one.getAttribute("aria-label"));
    if (one.labels?.length) return plain([...one.labels].map(read).join(" "));
    if (one.matches("tr")) return plain(read(one.querySelector("th") ?? one));
    if (one.matches("details")) return plain(read(one.querySelector("summary") ?? one));
    if (one.matches("header")) return "banner";
    if (one.matches("main")) return "main";
    if (one.matches("li")) return plain(read(one));
    if (one.matches("[aria-live]") && one.classList.contains("notices")) return "notices";
    if (one.matches(ROLES.group)) return plain([...one.querySelectorAll("legend, figcaption, caption, h2, h3")].slice(0, 1).map(read).join(""));
    if (one.matches("input, select, textarea")) return plain(one.title);
    return plain(read(one));
  };
  const is_there = (one) => one.checkVisibility({ visibilityProperty: true }) && !one.closest("[aria-hidden=true], [inert]");
  /** Those whose name is the one sought; where there is none, those whose name begins with it, then those that hold it. */
  const fitting = (ones, sought) => {
    const all = ones.map((one) => [named(one), one]);
    const ways = [(name) => name === sought, (name) => name.startsWith(sought), (name) => name.includes(sought)];
    return ways.map((fits) => all.filter(([name]) => fits(name))).find((found) => found.length > 0) ?? [];
  };
  const only = (inside, role, sought) => {
    const ones = [...inside.querySelectorAll(ROLES[role])].filter(is_there);
    const found = fitting(ones, sought);
    if (found.length === 1) return found[0][1];
    const all = (found.length ? found.map(([name]) => name) : ones.map(named)).map((name) => `“${name.slice(0, 60)}”`).slice(0, 80).join(", ");
    throw new Error(`${found.length} of role ${role} are called “${sought}”: ${all}`);
  };
  return only(around.reduce((inside, group) => only(inside, "group", group), document), role, name);
}
