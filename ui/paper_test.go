package ui

import (
	"bytes"
	"errors"
	"fmt"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/oned"
	"github.com/makiuchi-d/gozxing/qrcode"

	"tarpside/board/paper"
	"tarpside/model"
	"tarpside/model/code"
	"tarpside/model/tarpsheet"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// raster is the first page of a paper, at 150 dots an inch, as PNG.
func raster(t *testing.T, p paper.Paper) []byte {
	t.Helper()
	dir := t.TempDir()
	var doc bytes.Buffer
	if err := p.Write(&doc); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(dir, "a.pdf")
	if err := os.WriteFile(file, doc.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	if said, err := exec.Command("pdftoppm", "-png", "-r", "150", "-f", "1", "-l", "1", "-singlefile", file, filepath.Join(dir, "page")).CombinedOutput(); err != nil {
		t.Fatalf("pdftoppm (of the package poppler-utils): %v %s", err, said)
	}
	data, err := os.ReadFile(filepath.Join(dir, "page.png"))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// labelOf reads one label of a page with another program's reader, by its
// place among three across and ten down.
func labelOf(t *testing.T, page []byte, reader gozxing.Reader, nth int) string {
	t.Helper()
	img, err := png.Decode(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	px := func(points float64) int { return int(points * 150 / 72) }
	x, y := px(13.5+float64(nth%3)*198), px(36+float64(nth/3)*72)
	src, err := gozxing.NewLuminanceSourceFromImage(img).Crop(x, y, px(189), px(72))
	if err != nil {
		t.Fatal(err)
	}
	bitmap, err := gozxing.NewBinaryBitmap(gozxing.NewHybridBinarizer(src))
	if err != nil {
		t.Fatal(err)
	}
	got, err := reader.Decode(bitmap, map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_TRY_HARDER: true})
	if err != nil {
		t.Fatalf("label %d is not read: %v", nth+1, err)
	}
	return got.GetText()
}

func TestWhatIsPrintedOnALabelIsLoggedWhenItIsScanned(t *testing.T) {
	for _, c := range []struct {
		file   string
		reader gozxing.Reader
	}{{"labels-qr_R41.pdf", qrcode.NewQRCodeReader()}, {"labels-bars_R41.pdf", oned.NewCode128Reader()}} {
		y := keyboardAt(t, -1, ScreenGlance)
		if _, err := y.board.OpenScene("M02", "Bridge", nil, time.Time{}); err != nil {
			t.Fatal(err)
		}
		y.shell.take(y.board.Picture())
		page := raster(t, paperOf(t, y.window, c.file))
		scanned := map[byte]bool{}
		for nth := 0; nth < 30 && len(scanned) < 2; nth++ {
			text := labelOf(t, page, c.reader, nth)
			what, id, err := code.Find(y.shell.now().d, text)
			if err != nil {
				t.Fatal(err)
			}
			if scanned[what] {
				continue
			}
			scanned[what] = true
			y.scan(text)
			if what == code.Slot {
				if got := y.text("header"); !strings.Contains(got, "Slot "+id) || !strings.Contains(got, "all here") {
					t.Errorf("slot %s shows %q", id, got)
				}
				continue
			}
			y.scan("tarp")
			if y.countAt(id, "tarp") == 0 {
				t.Errorf("%s, scanned to the tarp, is not there: %s", id, y.text("reply"))
			}
			if e := y.board.Picture().Entries[len(y.board.Picture().Entries)-1]; e.Verb != model.PullOff || e.Item != id {
				t.Errorf("logged %+v", e.Act)
			}
		}
		if len(scanned) != 2 {
			t.Errorf("%s: no slot or no piece on the first page", c.file)
		}
	}
}

func paperOf(t *testing.T, w *window, file string) paper.Paper {
	t.Helper()
	for _, p := range w.shell.now().papers() {
		if p.File == file {
			return p
		}
	}
	t.Fatalf("no paper %s", file)
	return paper.Paper{}
}

func TestALabelThatWasReadWrongIsSaidSo(t *testing.T) {
	y := keyboardAt(t, 60, ScreenTarp)
	before := len(y.board.Picture().Entries)
	right := code.Label(code.Piece, "R41-001")
	y.scan(strings.Replace(right, "001", "002", 1))
	if got := y.text("reply"); !strings.Contains(got, "read or typed wrong") || len(y.board.Picture().Entries) != before || len(y.shell.tarp().picks) != 0 {
		t.Errorf("it says %q", got)
	}
	y.scan(strings.ToLower(right))
	if picks := y.shell.tarp().picks; len(picks) != 1 || picks[0].item != "R41-001" {
		t.Errorf("picked %+v", picks)
	}
}

// printing is a window with a printer of the test's own.
func printing(t *testing.T, minute int, screen string, viewer error) (w *window, made *[]string) {
	w = demoAt(t, minute, screen, glass1280, look.Options{})
	made = new([]string)
	opts := onDisk(w, t.TempDir())
	opts.Screen = screen
	opts.Print = func(p paper.Paper, opened func(error)) (string, error) {
		var doc bytes.Buffer
		if err := p.Write(&doc); err != nil {
			return "", err
		}
		*made = append(*made, p.File)
		later = func() { opened(viewer) }
		return "/papers/" + p.File, nil
	}
	w.reopened(glass1280, opts)
	return w, made
}

// later is what the viewer says, when it does.
var later func()

func TestAPaperOpensInTheViewerOrSaysWhereItIs(t *testing.T) {
	for _, viewer := range []error{nil, errors.New("no program")} {
		w, made := printing(t, 60, ScreenMore, viewer)
		w.tap("act", "papers")
		if cuts := parts.Cuts(w.shell.Root()); len(cuts) > 0 {
			t.Errorf("cut: %v", cuts)
		}
		w.tap("act", "paper-tarp")
		if got := w.text("read-back"); !strings.Contains(got, "Tarp sheet is made") || !strings.Contains(got, "/papers/tarp.pdf") {
			t.Errorf("it says %q", got)
		}
		later()
		w.parts = parts.CollectIn(w.shell.Root(), w.shell.Root().Size())
		want := "is open in another window"
		if viewer != nil {
			want = "No viewer opened"
		}
		if got := w.text("read-back"); !strings.Contains(got, want) || !strings.Contains(got, "/papers/tarp.pdf") {
			t.Errorf("it says %q", got)
		}
		if fmt.Sprint(*made) != "[tarp.pdf]" {
			t.Errorf("printed %v", *made)
		}
	}
}

func TestEachListHasItsPaper(t *testing.T) {
	for _, c := range []struct {
		screen string
		minute int
		touch  []string
		want   string
	}{
		{ScreenLeaving, 60, []string{"act read-aloud", "act paper"}, "open_R41.pdf"},
		{ScreenGlance, 91, []string{"act rig-leaving", "rig E42", "act read-aloud", "act paper"}, "release_E42.pdf"},
		{ScreenLoadUp, 125, []string{"act other", "act paper"}, "putback_R41.pdf"},
		{ScreenBringBack, 180, []string{"act paper"}, "closeout.pdf"},
	} {
		w, made := printing(t, c.minute, c.screen, nil)
		for _, touch := range c.touch {
			kind, id, _ := strings.Cut(touch, " ")
			w.tap(kind, id)
		}
		if fmt.Sprint(*made) != "["+c.want+"]" {
			t.Errorf("%s prints %v, want %s", c.screen, *made, c.want)
		}
	}
}

func TestPaperIsEnteredLineByLineAndTriedBeforeItIsLogged(t *testing.T) {
	w, _ := printing(t, 60, ScreenMore, nil)
	before := len(w.board.Picture().Entries)
	taps := func(list ...string) {
		for _, touch := range list {
			kind, id, _ := strings.Cut(touch, " ")
			w.tap(kind, id)
		}
	}
	taps("act papers", "act from-paper", "act next-line", "digit 1", "digit 9", "digit 4", "digit 0", "digit done")
	w.sound("the piece")
	taps("act s", "act t", "act e", "piece R41-055", "digit 2", "digit done", "place at:V1", "member nobody")
	if got := w.text("read-back"); !strings.Contains(got, "19:40") {
		t.Errorf("the trial says %q", got)
	}
	w.sound("one line")
	taps("act next-line", "act same-time", "act unreadable", "place "+tarpsheet.Unknown)
	w.shell.over[len(w.shell.over)-1].(*chooser).grid.Refresh()
	taps("member " + tarpsheet.Unknown)
	if len(w.board.Picture().Entries) != before {
		t.Fatal("a trial logged something")
	}
	taps("act log-paper")
	entries := w.board.Picture().Entries
	if len(entries) != before+2 {
		t.Fatalf("%d entries are new", len(entries)-before)
	}
	found := 0
	for _, e := range entries {
		if e.Entered == 0 {
			continue
		}
		found++
		if got := w.shell.now().clock(e.At()); got != "19:40" || e.Item != "R41-055" && e.Item != tarpsheet.Unknown {
			t.Errorf("%s at %s", e.Item, got)
		}
	}
	if found != 2 {
		t.Errorf("%d are marked as from paper", found)
	}
	taps("act next-line", "act unreadable", "act unreadable", "place home", "member nobody", "act line-1")
	if got := w.text("read-back"); strings.Contains(got, "would be") {
		t.Errorf("a line that was taken out is there: %q", got)
	}
}

func TestTwoWindowsAgreeByStick(t *testing.T) {
	a, _ := printing(t, 60, ScreenMore, nil)
	dir := t.TempDir()
	folders := func(w *window) {
		opts := onDisk(w, dir)
		list := opts.Folders
		opts.Folders = func(path string) (Folder, error) {
			f, err := list(path)
			f.Sticks, _ = filepath.Glob(filepath.Join(dir, "*.tarpside"))
			f.Inside = append(f.Inside, filepath.Join(dir, "tables.xlsx"), filepath.Join(dir, "nights"))
			return f, err
		}
		opts.Screen = ScreenMore
		w.reopened(glass1280, opts)
	}
	folders(a)
	a.tap("act", "papers")
	a.tap("act", "stick")
	a.sound("stick")
	if _, ok := a.find("act", "folder-tables.xlsx"); ok {
		t.Error("a log could be written into a workbook")
	}
	if _, ok := a.find("act", "folder-nights"); !ok {
		t.Error("a folder cannot be gone into")
	}
	a.tap("act", "write-stick")
	if got := a.text("read-back"); !strings.Contains(got, "entries are written") {
		t.Fatalf("it says %q", got)
	}
	names, err := filepath.Glob(filepath.Join(dir, "*.tarpside"))
	if err != nil || len(names) != 1 {
		t.Fatal(names, err)
	}
	b, _ := emptyWindow(t, glass1280, look.Options{})
	folders(b)
	b.tap("act", "papers")
	b.tap("act", "stick")
	b.tap("act", "stick-"+filepath.Base(names[0]))
	if len(b.board.Picture().State.Dept.Items) != 0 {
		t.Fatal("one touch took it in")
	}
	b.tap("act", "drop")
	if _, still := b.find("act", "take-in"); still || len(b.board.Picture().State.Dept.Items) != 0 {
		t.Error("a chosen file cannot be let go")
	}
	b.tap("act", "stick-"+filepath.Base(names[0]))
	b.tap("act", "take-in")
	if got := b.text("read-back"); !strings.Contains(got, "were new here") {
		t.Errorf("it says %q", got)
	}
	x, err1 := a.board.Picture().State.MarshalBalance()
	z, err2 := b.board.Picture().State.MarshalBalance()
	if err1 != nil || err2 != nil || !bytes.Equal(x, z) {
		t.Error("the two boards differ")
	}
}

func TestAPaperIsNamedInEnglishAsItNamesItself(t *testing.T) {
	for _, minute := range []int{0, 60, 125, 180} {
		w := demoAt(t, minute, ScreenTarp, glass1280, glassLook(glass1280, 1))
		for _, p := range append(w.shell.now().papers(), paper.Paper{Kind: "trail-slips", Title: "Trail slips"}) {
			_, listed := paperNames[p.Kind]
			if got := paperName(p); got != p.Title || !listed && p.Kind != "open" && p.Kind != "closeout" {
				t.Errorf("minute %d: %s is named %q, on paper %q", minute, p.Kind, got, p.Title)
			}
		}
	}
}
