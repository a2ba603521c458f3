"use strict";
(() => {
  const fold = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
  const joints = [...document.querySelectorAll("tbody")].map((body) => {
    const assembly = body.closest(".assembly");
    const heads = [assembly.closest(".machine").querySelector("h2"), assembly.querySelector("h3")];
    return { body, words: fold([...heads, body].map((part) => part.textContent).join(" ")) };
  });
  const box = document.getElementById("search");
  const count = document.getElementById("count");
  const search = () => {
    const wanted = fold(box.value).split(/\s+/).filter(Boolean);
    let shown = 0;
    for (const joint of joints) {
      joint.body.hidden = !wanted.every((word) => joint.words.includes(word));
      shown += joint.body.hidden ? 0 : 1;
    }
    for (const part of document.querySelectorAll(".assembly, .machine")) {
      part.hidden = !part.querySelector("tbody:not([hidden])");
    }
    count.textContent = wanted.length === 0 ? "" : `${shown} of ${joints.length} joints`;
  };
  box.addEventListener("input", search);
  for (const choice of document.querySelectorAll("input[name=unit]")) {
    choice.addEventListener("change", () => { document.body.dataset.unit = choice.value; });
  }
  document.querySelector(".controls").addEventListener("submit", (event) => event.preventDefault());
  document.querySelector(".controls").hidden = false;
})();
