// Command gallery draws every part and every screen in its states, by day and
// by night, as PNG and one page to look at. It needs no display.
package main

import (
	"crypto/rand"
	"flag"
	"fmt"
	"html"
	"image"
	"image/png"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tarpside/board"
	"tarpside/ui"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, stdout, stderr io.Writer) int {
	f := flag.NewFlagSet("gallery", flag.ContinueOnError)
	f.SetOutput(stderr)
	out := f.String("out", "", "the `folder` to write to")
	only := f.String("only", "", "draw only what has these letters in its name")
	sizes := f.String("sizes", "1280x800,1024x768,1920x1200", "the sizes of the window")
	if err := f.Parse(args); err != nil {
		return 2
	}
	if *out == "" {
		fmt.Fprintln(stderr, "gallery: say where the pictures go: -out DIR")
		return 2
	}
	g := &gallery{out: *out, only: *only, now: time.Date(2026, 3, 14, 12, 0, 0, 0, time.UTC)}
	if err := g.draw(strings.Split(*sizes, ",")); err != nil {
		fmt.Fprintln(stderr, "gallery:", err)
		return 1
	}
	fmt.Fprintf(stdout, "%d pictures in %s; open %s\n", len(g.files), *out, filepath.Join(*out, "index.html"))
	return 0
}

// gallery is one run.
type gallery struct {
	out, only string
	now       time.Time
	files     []shot
}

type shot struct{ file, name string }

func (g *gallery) draw(sizes []string) error {
	if err := os.MkdirAll(g.out, 0o755); err != nil {
		return err
	}
	test.NewApp() // the toolkit's app without a window: it only paints
	for _, day := range []bool{true, false} {
		for _, s := range sizes {
			if err := g.screens(s, day); err != nil {
				return err
			}
		}
		if err := g.parts(day); err != nil {
			return err
		}
	}
	return g.sheet()
}

func palette(day bool) string {
	if day {
		return "day"
	}
	return "night"
}

// screens draws the moments of the demo scene at one size.
func (g *gallery) screens(sizeText string, day bool) error {
	var w, h int
	if _, err := fmt.Sscanf(sizeText, "%dx%d", &w, &h); err != nil {
		return fmt.Errorf("%q is no size such as 1280x800", sizeText)
	}
	size := fyne.NewSize(float32(w), float32(h))
	for _, m := range moments {
		name := fmt.Sprintf("%s %s %s", m.name, sizeText, palette(day))
		if !strings.Contains(name, g.only) {
			continue
		}
		img, err := g.moment(m, size, day)
		if err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		if err := g.keep(name, img); err != nil {
			return err
		}
	}
	return nil
}

// moment opens the demo at a minute and touches what the moment needs.
func (g *gallery) moment(m moment, size fyne.Size, day bool) (image.Image, error) {
	temp, err := os.MkdirTemp("", "gallery-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(temp)
	start := board.DemoStart(g.now)
	now := func() time.Time { return start.Add(time.Duration(max(m.minute, 0)) * time.Minute) }
	opts := board.Options{Now: now, Random: rand.Reader, Device: "A"}
	open := func(path string) (*board.Board, error) { return board.OpenDemo(path, start, m.minute, opts) }
	if m.empty {
		open = func(path string) (*board.Board, error) { return board.Open(path, opts) }
	}
	b, err := open(filepath.Join(temp, "gallery.db"))
	if err != nil {
		return nil, err
	}
	defer b.Close()
	shell := ui.New(ui.Options{Board: b, Now: now, Post: func(f func()) { f() }, SetTheme: fyne.CurrentApp().Settings().SetTheme,
		Look: ui.LookFor(size, day), Practice: m.practice, Screen: m.screen,
		Demo: nothing, Real: nothing, Folders: func(string) (ui.Folder, error) { return folder, nil }, Print: printed,
		LoadFrom: func(_, _ string, dry bool) ([]string, error) { return loadDemo(b, dry) }})
	win := test.NewWindow(shell.Root())
	defer win.Close()
	win.SetPadded(false)
	win.Resize(size)
	shell.Refresh()
	for _, step := range m.touch {
		if err := touch(win, shell, step); err != nil {
			return nil, err
		}
	}
	return win.Canvas().Capture(), nil
}

// touch taps the middle of a part, named "kind id".
func touch(win fyne.Window, shell *ui.Shell, step string) error {
	kind, id, _ := strings.Cut(step, " ")
	for _, p := range parts.CollectIn(shell.Root(), shell.Root().Size()) {
		if p.Kind == kind && p.ID == id {
			test.TapCanvas(win.Canvas(), fyne.NewPos(float32(p.X)+float32(p.W)/2, float32(p.Y)+float32(p.H)/2))
			return nil
		}
	}
	return nil // on a small glass the part may be on a later page
}

// parts draws the stories of the parts.
func (g *gallery) parts(day bool) error {
	for _, s := range parts.Stories() {
		name := "part " + s.Name + " " + palette(day)
		if !strings.Contains(name, g.only) {
			continue
		}
		th := look.New(look.Options{Day: day})
		fyne.CurrentApp().Settings().SetTheme(th)
		if err := g.keep(name, look.Draw(s.Build(), s.Size, th)); err != nil {
			return err
		}
	}
	return nil
}

func (g *gallery) keep(name string, img image.Image) error {
	file := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			return r
		}
		return '-'
	}, strings.ToLower(name)) + ".png"
	f, err := os.Create(filepath.Join(g.out, file))
	if err != nil {
		return err
	}
	if err := png.Encode(f, img); err != nil {
		f.Close()
		return err
	}
	g.files = append(g.files, shot{file, name})
	return f.Close()
}

// sheet writes the page that shows all pictures.
func (g *gallery) sheet() error {
	var b strings.Builder
	b.WriteString("<!doctype html><meta charset=utf-8><title>Tarpside, every part and screen</title>" +
		"<style>body{background:#888;font:16px sans-serif;margin:16px}figure{display:inline-block;margin:8px;vertical-align:top}" +
		"img{max-width:620px;display:block}</style>\n")
	for _, s := range g.files {
		fmt.Fprintf(&b, "<figure><a href=%q><img loading=lazy src=%q alt=%q></a><figcaption>%s</figcaption></figure>\n",
			s.file, s.file, s.name, html.EscapeString(s.name))
	}
	return os.WriteFile(filepath.Join(g.out, "index.html"), []byte(b.String()), 0o644)
}
