package paper_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/draw"
	"gloamline/ui/paper"
	"gloamline/ui/scene"
)

// pages makes small pages that differ.
func pages(texts ...string) []*draw.List {
	var out []*draw.List
	for _, s := range texts {
		l := draw.NewList(scene.PageSize)
		l.Text(draw.Text{S: s, At: draw.Pt(50, 80), Font: draw.Font{Size: 14}, Color: draw.Gray(0)})
		out = append(out, l)
	}
	return out
}

// left lists what lies in a folder.
func left(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	out := []string{}
	for _, e := range entries {
		out = append(out, e.Name())
	}
	return out
}

// Ensure that pages are written under the names told, one PDF for all, one picture
// for each, by the ending of the name.
func TestSaveNames(t *testing.T) {
	for ext, want := range map[string][]string{
		".pdf": {"n.pdf"}, ".png": {"n-2.png", "n-3.png", "n.png"}, ".svg": {"n-2.svg", "n-3.svg", "n.svg"},
		".PNG": {"n-2.PNG", "n-3.PNG", "n.PNG"}, ".Pdf": {"n.Pdf"},
	} {
		dir := t.TempDir()
		names, err := paper.Save(filepath.Join(dir, "n"+ext), "A night", pages("one", "two", "three"))
		require.NoError(t, err)
		assert.Equal(t, want, left(t, dir))
		require.Len(t, names, len(want))
		assert.Equal(t, filepath.Join(dir, "n"+ext), names[0], "the first page has the name asked for")
		for i, n := range names[1:] {
			assert.Equal(t, filepath.Join(dir, want[i]), n)
		}
	}
}

// Ensure that each picture is that of its page.
func TestSavePagesInOrder(t *testing.T) {
	path := filepath.Join(t.TempDir(), "n.svg")
	names, err := paper.Save(path, "", pages("one", "two"))
	require.NoError(t, err)
	for i, want := range []string{">one<", ">two<"} {
		b, err := os.ReadFile(names[i])
		require.NoError(t, err)
		assert.Contains(t, string(b), want)
	}
}

// Ensure that a name is taken by its ending alone, and that nothing is made of a name
// that is not taken, or of no pages.
func TestSaveRefuses(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"n.txt", "n", "n.pdf.gz", "n.jpg", "pdf", ""} {
		path := filepath.Join(dir, name)
		assert.False(t, paper.Takes(path), name)
		_, err := paper.Save(path, "", pages("one"))
		assert.ErrorIs(t, err, paper.ErrFormat)
	}
	for _, name := range []string{"n.pdf", "n.png", "n.svg", "n.x.SVG"} {
		path := filepath.Join(dir, name)
		assert.True(t, paper.Takes(path), name)
		_, err := paper.Save(path, "", nil)
		assert.ErrorIs(t, err, paper.ErrNothing, name)
	}
	assert.Empty(t, left(t, dir))
}

// Ensure that no file is ever written over, and that the error names the file that
// stands.
func TestSaveWritesOverNothing(t *testing.T) {
	for _, ext := range []string{".pdf", ".png", ".svg"} {
		path := filepath.Join(t.TempDir(), "night"+ext)
		require.NoError(t, os.WriteFile(path, []byte("mine"), 0o600))
		names, err := paper.Save(path, "", pages("one", "two"))
		assert.ErrorIs(t, err, fs.ErrExist)
		assert.Empty(t, names)
		var at *fs.PathError
		require.ErrorAs(t, err, &at)
		assert.Equal(t, path, at.Path)
		b, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.Equal(t, "mine", string(b))
		assert.Len(t, left(t, filepath.Dir(path)), 1)
	}
}

// Ensure that nothing is written through a link, whether it leads anywhere or not.
func TestSaveFollowsNoLink(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "night.pdf")
	if err := os.Symlink(filepath.Join(dir, "elsewhere.pdf"), path); err != nil {
		t.Skip("no links here")
	}
	_, err := paper.Save(path, "", pages("one"))
	assert.ErrorIs(t, err, fs.ErrExist)
	assert.NoFileExists(t, filepath.Join(dir, "elsewhere.pdf"))
}

// Ensure that of several pages none is left when one cannot be written.
func TestSaveAllOrNone(t *testing.T) {
	path := filepath.Join(t.TempDir(), "night.png")
	second := filepath.Join(filepath.Dir(path), "night-2.png")
	require.NoError(t, os.WriteFile(second, []byte("mine"), 0o600))
	names, err := paper.Save(path, "", pages("one", "two", "three"))
	assert.ErrorIs(t, err, fs.ErrExist)
	var at *fs.PathError
	require.ErrorAs(t, err, &at)
	assert.Equal(t, second, at.Path)
	assert.Empty(t, names)
	assert.Equal(t, []string{"night-2.png"}, left(t, filepath.Dir(path)))
	b, err := os.ReadFile(second)
	require.NoError(t, err)
	assert.Equal(t, "mine", string(b))
}

// Ensure that a folder that is missing, is a file, or may not be written to is told
// as such and left as it was.
func TestSaveWhereItCannot(t *testing.T) {
	dir := t.TempDir()
	_, err := paper.Save(filepath.Join(dir, "no", "night.png"), "", pages("one"))
	assert.ErrorIs(t, err, fs.ErrNotExist)
	file := filepath.Join(dir, "file")
	require.NoError(t, os.WriteFile(file, nil, 0o600))
	_, err = paper.Save(filepath.Join(file, "night.svg"), "", pages("one"))
	assert.Error(t, err)
	assert.Equal(t, []string{"file"}, left(t, dir))

	if os.Geteuid() == 0 {
		return // the superuser may write anywhere
	}
	shut := filepath.Join(dir, "shut")
	require.NoError(t, os.Mkdir(shut, 0o500))
	_, err = paper.Save(filepath.Join(shut, "night.pdf"), "", pages("one"))
	assert.ErrorIs(t, err, fs.ErrPermission)
	assert.Empty(t, left(t, shut))
}
