(function () {
  "use strict";
  var id = function (s) { return document.getElementById(s); };
  var frames = JSON.parse(id("frames").textContent);
  var img = id("frame"), button = id("play"), at = id("at"), says = id("says");
  var timer = null;
  function show(n, aloud) {
    var f = frames[n];
    at.value = n;
    at.setAttribute("aria-valuetext", f.says);
    img.src = f.src;
    img.alt = f.says;
    // While it plays, a voice is not made to read each step.
    says.setAttribute("aria-live", aloud ? "polite" : "off");
    says.textContent = f.says;
  }
  function stop() {
    if (timer !== null) { clearInterval(timer); }
    timer = null;
    button.textContent = button.dataset.play;
    show(Number(at.value), true);
  }
  function step() {
    var n = Number(at.value) + 1;
    if (n >= frames.length) { stop(); return; }
    show(n, false);
  }
  function play() {
    if (Number(at.value) >= frames.length - 1) { show(0, false); }
    button.textContent = button.dataset.pause;
    timer = setInterval(step, 400);
  }
  at.max = frames.length - 1;
  at.value = 0;
  at.addEventListener("input", function () { var n = Number(at.value); if (timer !== null) { stop(); } show(n, true); });
  button.addEventListener("click", function () { if (timer === null) { play(); } else { stop(); } });
  id("controls").hidden = false;
})();
