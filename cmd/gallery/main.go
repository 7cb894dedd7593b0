// Command gallery draws every part and every screen in its states, by day and
// by night, as PNG and one page to look at. It needs no display.
package main

import (
	"flag"
	"fmt"
	"html"
	"image"
	"image/png"
	"io"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tarpside/ui"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, stdout, stderr io.Writer) int {
	f := flag.NewFlagSet("gallery", flag.ContinueOnError)
	f.SetOutput(stderr)
	out := f.String("out", "", "the `folder` to write to")
	only := f.String("only", "", "draw only what has these letters in its name")
	sizes := f.String("sizes", "1280x800,1024x768,1920x1200", "the sizes of the window")
	language := f.String("language", "", "the `language` of the words, where it is not the system's: "+words.Pseudo)
	readme := f.Bool("readme", false, "draw the six pictures of the README and no others: -readme -out assets")
	if err := f.Parse(args); err != nil {
		return 2
	}
	if err := words.Use(*language); err != nil {
		fmt.Fprintln(stderr, "gallery:", err)
		return 2
	}
	if *out == "" {
		fmt.Fprintln(stderr, "gallery: say where the pictures go: -out DIR")
		return 2
	}
	files, err := newScenes()
	if err != nil {
		fmt.Fprintln(stderr, "gallery:", err)
		return 1
	}
	defer files.remove()
	g := &gallery{out: *out, only: *only, files: files}
	if *readme {
		err = g.readme()
	} else {
		err = g.draw(strings.Split(*sizes, ","))
	}
	if err != nil {
		fmt.Fprintln(stderr, "gallery:", err)
		return 1
	}
	if *readme {
		fmt.Fprintf(stdout, "%d pictures in %s\n", len(g.shots), *out)
		return 0
	}
	fmt.Fprintf(stdout, "%d pictures in %s; open %s\n", len(g.shots), *out, filepath.Join(*out, "index.html"))
	return 0
}

// gallery is one run.
type gallery struct {
	out, only string
	files     *scenes
	shots     []shot
}

type shot struct{ file, name string }

func (g *gallery) draw(sizes []string) error {
	if err := os.MkdirAll(g.out, 0o755); err != nil {
		return err
	}
	test.NewApp() // the toolkit's app without a window: it only paints
	still()
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
		if err := g.screen(m, name, size, day); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	return nil
}

// screen draws one moment at one size.
func (g *gallery) screen(m moment, name string, size fyne.Size, day bool) error {
	st, err := g.files.open(m, size, ui.LookFor(size, day))
	if err != nil {
		return err
	}
	defer st.close()
	if err := st.touchAll(); err != nil {
		return err
	}
	return g.keep(name, st.win.Canvas().Capture())
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
	g.shots = append(g.shots, shot{file, name})
	return f.Close()
}

// sheet writes the page that shows all pictures.
func (g *gallery) sheet() error {
	var b strings.Builder
	b.WriteString("<!doctype html><meta charset=utf-8><title>Tarpside, every part and screen</title>" +
		"<style>body{background:#888;font:16px sans-serif;margin:16px}figure{display:inline-block;margin:8px;vertical-align:top}" +
		"img{max-width:620px;display:block}</style>\n")
	for _, s := range g.shots {
		fmt.Fprintf(&b, "<figure><a href=%q><img loading=lazy src=%q alt=%q></a><figcaption>%s</figcaption></figure>\n",
			s.file, s.file, s.name, html.EscapeString(s.name))
	}
	return os.WriteFile(filepath.Join(g.out, "index.html"), []byte(b.String()), 0o644)
}
