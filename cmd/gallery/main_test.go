package main

import (
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestAPictureOfAScreenIsDrawnWithoutADisplay(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	var said, wrong strings.Builder
	if code := run([]string{"-out", dir, "-sizes", "1024x768", "-only", "tarp picked 1024x768 day"}, &said, &wrong); code != 0 {
		t.Fatalf("exit %d: %s", code, wrong.String())
	}
	f, err := os.Open(filepath.Join(dir, "tarp-picked-1024x768-day.png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	if b := img.Bounds(); b.Dx() != 1024 || b.Dy() != 768 {
		t.Errorf("the picture is %v", b)
	}
	colours := map[any]bool{}
	for x := 0; x < 1024; x += 7 {
		for y := 0; y < 768; y += 7 {
			colours[img.At(x, y)] = true
		}
	}
	if len(colours) < 10 {
		t.Errorf("only %d colours: the screen is not drawn", len(colours))
	}
	page, err := os.ReadFile(filepath.Join(dir, "index.html"))
	if err != nil || !strings.Contains(string(page), "tarp-picked-1024x768-day.png") {
		t.Errorf("the contact sheet does not show it: %v", err)
	}
}

func TestBadUseIsRefusedInWords(t *testing.T) {
	for _, args := range [][]string{nil, {"-out", t.TempDir(), "-sizes", "large"}} {
		var said, wrong strings.Builder
		if code := run(args, &said, &wrong); code == 0 || wrong.Len() == 0 {
			t.Errorf("%v: exit %d, %q", args, code, wrong.String())
		}
	}
}

func TestTheReadmeShowsTheSixPicturesAndTheyAreThere(t *testing.T) {
	page, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	if len(readmePictures) != 6 {
		t.Errorf("%d pictures, want six", len(readmePictures))
	}
	for _, r := range readmePictures {
		file := "assets/pictures/" + r.file + ".png"
		if !strings.Contains(string(page), "("+file+")") {
			t.Errorf("the README does not show %s", file)
		}
		if _, err := os.Stat(filepath.Join("..", "..", file)); err != nil {
			t.Error(err)
		}
		if _, ok := momentNamed(r.moment); !ok {
			t.Errorf("%s is drawn from no moment", file)
		}
	}
}

func TestEveryMomentHasAnotherName(t *testing.T) {
	seen := map[string]bool{}
	for _, m := range moments {
		if seen[m.name] {
			t.Errorf("two moments are named %q", m.name)
		}
		seen[m.name] = true
	}
}
