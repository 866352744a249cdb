package replay_test

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/base64"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/paper/replay"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

func htmlOf(t testing.TB, s scene.Shown) string {
	t.Helper()
	c, _ := scene.Share(secretNight(t), s, words.Prefs{})
	var b bytes.Buffer
	require.NoError(t, replay.Write(&b, c, words.Prefs{}))
	return b.String()
}

// Ensure that the file asks for nothing from outside, runs nothing but its own script,
// and can be used by those who do not see it, whatever browser there is.
func TestPageIsWhole(t *testing.T) {
	page := htmlOf(t, all())
	for _, m := range regexp.MustCompile(`(?i)\b(?:src|href|action|poster|srcset|data)\s*=\s*"([^"]{0,12})`).FindAllStringSubmatch(page, -1) {
		assert.True(t, strings.HasPrefix(m[1], "data:"), m[0])
	}
	for _, no := range []string{"http:", "https:", "//fonts", "@import", "url(", "fetch(", "XMLHttpRequest", "WebSocket", "eval(", "innerHTML", "<iframe", "<link", "unsafe-inline"} {
		assert.NotContains(t, page, no)
	}
	assert.NotRegexp(t, `<[^>]+\son\w+=`, page)
	assert.Contains(t, page, `default-src 'none'`)
	for _, tag := range []string{"style", "script"} {
		m := regexp.MustCompile(`(?s)<`+tag+`>(.*?)</`+tag+`>`).FindAllStringSubmatch(page, -1)
		require.Len(t, m, 1, tag)
		sum := sha256.Sum256([]byte(m[0][1]))
		assert.Contains(t, page, tag+"-src 'sha256-"+base64.StdEncoding.EncodeToString(sum[:])+"'", "the policy lets its own %s run", tag)
	}
	for _, must := range []string{`lang="en-GB"`, `<h1>`, `alt="Photograph of fish 1"`, `aria-label="Time of the night"`, `role="status"`} {
		assert.Contains(t, page, must)
	}
}

// browse opens a page in a headless browser that can reach nothing and returns the
// document as it stands after the script has run for a while.
func browse(t *testing.T, page string) string {
	t.Helper()
	var browser string
	for _, name := range []string{"chromium", "chromium-browser"} {
		if p, err := exec.LookPath(name); err == nil {
			browser = p
			break
		}
	}
	if browser == "" {
		t.Skip("chromium is not installed: the page was looked at by structure alone (Debian: apt-get install chromium)")
	}
	dir := t.TempDir()
	file := filepath.Join(dir, "night.html")
	require.NoError(t, os.WriteFile(file, []byte(page), 0o600))
	ctx, stop := context.WithTimeout(t.Context(), 90*time.Second)
	defer stop()
	cmd := exec.CommandContext(ctx, browser, "--headless", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--user-data-dir="+filepath.Join(dir, "profile"),
		"--proxy-server=127.0.0.1:9", "--host-resolver-rules=MAP * ~NOTFOUND", "--disable-background-networking", "--no-first-run",
		"--virtual-time-budget=60000", "--dump-dom", "file://"+file)
	cmd.Env = append(os.Environ(), "HOME="+dir)
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	require.NoError(t, err, stderr.String())
	return string(out)
}

// drive adds a script to a page, and to its policy the right to run it.
func drive(page, script string) string {
	sum := sha256.Sum256([]byte(script))
	page = strings.Replace(page, "script-src ", "script-src 'sha256-"+base64.StdEncoding.EncodeToString(sum[:])+"' ", 1)
	return strings.Replace(page, "</body>", "<script>"+script+"</script></body>", 1)
}

// Ensure that the file as it leaves runs its script under its own policy, without any
// network, and that the same file with one letter of the script changed does not.
func TestBrowserRuns(t *testing.T) {
	page := htmlOf(t, all())
	shown := browse(t, page)
	assert.Regexp(t, `<div id="controls">`, shown, "the script shows its buttons")
	other := strings.Replace(page, `"use strict";`, `"use strict" ;`, 1)
	require.NotEqual(t, page, other)
	assert.Regexp(t, `<div id="controls" hidden="">`, browse(t, other), "the policy lets nothing else run")
}

// Ensure that play goes through the night to its end, pause holds it, and the slider
// goes to any step, each with its own picture and words.
func TestBrowserPlays(t *testing.T) {
	const script = `(function(){
var $=function(s){return document.getElementById(s)}, log=[], first=$("frame").src;
function note(w){log.push(w+"="+$("at").value+"/"+$("at").max+" "+$("play").textContent+" "+($("frame").naturalWidth>0)+" "+$("says").textContent)}
function finish(){document.title=log.join("|")}
$("play").click();
setTimeout(function(){ note("playing"); $("play").click(); var held=$("at").value;
 setTimeout(function(){ log.push("held="+(held===$("at").value)); 
  $("at").value=$("at").max; $("at").dispatchEvent(new Event("input"));
  setTimeout(function(){ note("end"); log.push("changed="+(first!==$("frame").src));
   $("play").click();
   setTimeout(function(){ note("played"); finish(); }, 35000);
  },500);
 },2000);
},1900);
})()`
	shown := browse(t, drive(htmlOf(t, all()), script))
	m := regexp.MustCompile(`<title>(.*?)</title>`).FindStringSubmatch(shown)
	require.NotNil(t, m)
	said := strings.Split(m[1], "|")
	require.Len(t, said, 5, m[1])
	assert.Regexp(t, `^playing=[34]/\d+ Pause true \d\d:\d\d, .*no fish$`, said[0])
	assert.Equal(t, "held=true", said[1])
	assert.Regexp(t, `^end=(\d+)/\d+ Play true \d\d:\d\d, .*; 2 landed$`, said[2])
	assert.Equal(t, "changed=true", said[3])
	assert.Equal(t, strings.TrimPrefix(said[2], "end"), strings.TrimPrefix(said[4], "played"), "played from the start to the end again")
}
