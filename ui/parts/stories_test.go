package parts

import (
	"bytes"
	"image"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"tarpside/ui/look"
)

func faces(root fyne.CanvasObject, visit func(fyne.CanvasObject, *face)) {
	all := rect{-1e9, -1e9, 1e9, 1e9}
	walk(root, fyne.Position{}, all, func(o fyne.CanvasObject, _ rect) {
		if f, ok := o.(interface{ base() *face }); ok {
			visit(o, f.base())
		}
	})
}

func TestEveryStoryDrawsByDayAndNightWithoutACutOrATextOverAnother(t *testing.T) {
	app := test.NewTempApp(t)
	for _, opt := range []look.Options{{}, {Day: true}, {Text: 1.3}, {Text: 1.6, Day: true}, {PerInch: 220}, {Locked: true}} {
		th := look.New(opt)
		app.Settings().SetTheme(th)
		for _, s := range Stories() {
			obj := s.Build()
			size := fyne.NewSize(look.U(s.Size.Width), look.U(s.Size.Height))
			img := look.Draw(obj, size, th)
			if cuts := Cuts(obj); len(cuts) > s.Cuts {
				t.Errorf("%+v, %s: cut %q", opt, s.Name, cuts)
			}
			if img.Bounds().Dx() != int(size.Width) || img.Bounds().Dy() != int(size.Height) {
				t.Errorf("%s: drawn %v, want %v", s.Name, img.Bounds(), size)
			}
			faces(obj, func(o fyne.CanvasObject, f *face) {
				if f.pen.crowded(f.Size()) && len(f.pen.cuts) == 0 {
					t.Errorf("%+v, %s: %T %q lies over itself", opt, s.Name, o, f.part.Text)
				}
			})
		}
	}
}

func TestACutIsReported(t *testing.T) {
	app := test.NewTempApp(t)
	app.Settings().SetTheme(look.New(look.Options{}))
	for _, s := range Stories() {
		obj := s.Build()
		look.Draw(obj, s.Size, look.New(look.Options{}))
		if got := len(Cuts(obj)); got != s.Cuts {
			t.Errorf("%s: %d cuts reported, want %d: %q", s.Name, got, s.Cuts, Cuts(obj))
		}
	}
}

func TestAPaletteSwitchReachesEveryPartLive(t *testing.T) {
	app := test.NewTempApp(t)
	night, day := look.New(look.Options{}), look.New(look.Options{Day: true})
	for _, s := range Stories() {
		app.Settings().SetTheme(day)
		fresh := look.Draw(s.Build(), s.Size, day).(*image.NRGBA)
		app.Settings().SetTheme(night)
		obj := s.Build()
		look.Draw(obj, s.Size, night)
		switched := look.Draw(obj, s.Size, day).(*image.NRGBA)
		if !bytes.Equal(fresh.Pix, switched.Pix) {
			t.Errorf("%s: switched to day it is not the same picture", s.Name)
		}
	}
}

func TestEveryTargetIsAtLeastEightyEightPixels(t *testing.T) {
	app := test.NewTempApp(t)
	th := look.New(look.Options{})
	app.Settings().SetTheme(th)
	for _, s := range Stories() {
		obj := s.Build()
		look.Draw(obj, s.Size, th)
		all := rect{-1e9, -1e9, 1e9, 1e9}
		walk(obj, fyne.Position{}, all, func(o fyne.CanvasObject, _ rect) {
			if _, ok := o.(fyne.Tappable); !ok {
				return
			}
			l, ok := o.(interface {
				Part() Part
				Off() bool
			})
			// A slot is drawn as it is in life and a door of a rig drawn
			// whole may be narrower; both have 88 in the other direction or
			// are for looking, and the screen offers them larger.
			if !ok || l.Off() || l.Part().Kind == KindSlot || l.Part().Kind == KindDoor {
				return
			}
			if size := o.Size(); size.Width < look.Floor-0.5 || size.Height < look.Floor-0.5 {
				t.Errorf("%s: %T %q is %v", s.Name, o, l.Part().ID, size)
			}
		})
	}
}

func TestPadsKeepTheirKeysUsableAtTheirLeastSize(t *testing.T) {
	for _, o := range []fyne.CanvasObject{
		NewDigitPad(func(string) {}),
		NewLetterPad(func(string) {}, func() {}, func() {}),
		NewYesNo(AnswerView{Check: "c", Question: "Works?", Yes: "Yes", No: "No"}, nil),
	} {
		open(t, container.NewStack(o), 10, 10)
		o.Resize(o.MinSize())
		for _, k := range inside(o) {
			if k.Size().Width < look.Floor-0.5 || k.Size().Height < look.Floor-0.5 {
				t.Errorf("%T: a key is %v", o, k.Size())
			}
		}
	}
}

func TestTheLetterPadTypesNames(t *testing.T) {
	var got string
	l := NewLetterPad(func(s string) { got += s }, func() { got = got[:len(got)-1] }, func() { got += "." })
	open(t, container.NewStack(l), 1168, 400)
	press := func(ids ...string) {
		for _, id := range ids {
			for _, o := range l.Inside() {
				if k := o.(*Key); k.Part().ID == id {
					k.Tapped(nil)
					break
				}
			}
		}
	}
	press("v", "e", "r", "n", "space", "shift", "d", "figures", "7", "figures", "e", "delete", "done")
	if got != "Vern D7." {
		t.Errorf("typed %q, want %q", got, "Vern D7.")
	}
}

func TestAGridMakesOnlyTheTilesInView(t *testing.T) {
	tiles := NewTiles(nil)
	open(t, container.NewStack(tiles), 920, 400)
	tiles.Set(manyTiles(2000))
	for off := float32(0); off < 50000; off += 777 {
		tiles.ScrollToOffset(off)
	}
	if n := len(tiles.pool); n > 40 {
		t.Errorf("%d tiles made for a view of some 20", n)
	}
}

func BenchmarkTwoThousandTilesNothingChanged(b *testing.B) {
	tiles := NewTiles(nil)
	open(b, container.NewStack(tiles), 1280, 700)
	views := manyTiles(2000)
	tiles.Set(views)
	for b.Loop() {
		tiles.Set(views)
	}
}

func BenchmarkTwoThousandTilesOneChanged(b *testing.B) {
	tiles := NewTiles(nil)
	open(b, container.NewStack(tiles), 1280, 700)
	views := manyTiles(2000)
	for i := 0; b.Loop(); i++ {
		views[9].Picked = i%2 == 0
		tiles.Set(views)
	}
}

func BenchmarkTwoThousandTilesScroll(b *testing.B) {
	tiles := NewTiles(nil)
	open(b, container.NewStack(tiles), 1280, 700)
	tiles.Set(manyTiles(2000))
	for i := 0; b.Loop(); i++ {
		tiles.ScrollToOffset(float32(i * 40 % 20000))
	}
}

func BenchmarkTwoThousandTilesCollect(b *testing.B) {
	tiles := NewTiles(nil)
	win := open(b, container.NewStack(tiles), 1280, 700)
	tiles.Set(manyTiles(2000))
	for b.Loop() {
		Collect(win.Canvas())
	}
}
