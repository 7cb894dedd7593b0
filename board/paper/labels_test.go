package paper_test

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/boombuler/barcode"
	"github.com/boombuler/barcode/code128"
	"github.com/boombuler/barcode/qr"
	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/oned"
	"github.com/makiuchi-d/gozxing/qrcode"
	"github.com/makiuchi-d/gozxing/qrcode/decoder"

	"tarpside/board/paper"
	"tarpside/model"
	"tarpside/model/code"
)

// rendered are the pages of a PDF as pictures.
func rendered(tb testing.TB, doc []byte, dpi int) (out []*image.Gray) {
	tb.Helper()
	dir := tb.TempDir()
	name := filepath.Join(dir, "labels.pdf")
	if err := os.WriteFile(name, doc, 0o644); err != nil {
		tb.Fatal(err)
	}
	if said, err := exec.Command("pdftoppm", "-gray", "-png", "-r", fmt.Sprint(dpi), name, filepath.Join(dir, "page")).CombinedOutput(); err != nil {
		tb.Fatalf("pdftoppm (of the package poppler-utils): %v %s", err, said)
	}
	files, err := filepath.Glob(filepath.Join(dir, "page-*.png"))
	if err != nil || len(files) == 0 {
		tb.Fatal("no page was drawn", err)
	}
	slices.Sort(files)
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			tb.Fatal(err)
		}
		img, err := png.Decode(bytes.NewReader(data))
		if err != nil {
			tb.Fatal(err)
		}
		gray := image.NewGray(img.Bounds())
		for y := range img.Bounds().Dy() {
			for x := range img.Bounds().Dx() {
				gray.Set(x, y, img.At(x, y))
			}
		}
		out = append(out, gray)
	}
	return out
}

// soil makes a print dirty: every shade wanders, and one dot in 200 is a speck.
func soil(img *image.Gray, r *rand.Rand) {
	for i, v := range img.Pix {
		n := int(v) + r.Intn(81) - 40
		if r.Intn(200) == 0 {
			n = r.Intn(256)
		}
		img.Pix[i] = uint8(min(255, max(0, n)))
	}
}

// smooth takes the middle of each dot and its eight neighbours, as the optics
// and the first step of a reader do with specks; the reader here has neither.
func smooth(img *image.Gray, r image.Rectangle) *image.Gray {
	out := image.NewGray(r)
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			var near [9]byte
			for k := range near { // sorted as they come
				at := k
				for v := img.Pix[(y+k/3-1)*img.Stride+x+k%3-1]; ; at-- {
					if at == 0 || near[at-1] <= v {
						near[at] = v
						break
					}
					near[at] = near[at-1]
				}
			}
			out.Pix[(y-r.Min.Y)*out.Stride+x-r.Min.X] = near[4]
		}
	}
	return out
}

// read finds the code in a picture with a reader that is not ours.
func read(img image.Image, reader gozxing.Reader) (string, error) {
	src := gozxing.NewLuminanceSourceFromImage(img)
	bitmap, err := gozxing.NewBinaryBitmap(gozxing.NewGlobalHistgramBinarizer(src))
	if err != nil {
		return "", err
	}
	got, err := reader.Decode(bitmap, map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_TRY_HARDER: true})
	if err != nil {
		return "", err
	}
	return got.GetText(), nil
}

// labelled are the codes that a rig's labels must have.
func labelled(d *model.Department, rig string) map[string]bool {
	want := map[string]bool{}
	for i := range d.Items {
		if d.Items[i].Rig == rig {
			want[code.Label(code.Piece, d.Items[i].ID)] = true
		}
	}
	for i := range d.Slots {
		if d.Slots[i].Rig == rig {
			want[code.Label(code.Slot, d.Slots[i].ID)] = true
		}
	}
	return want
}

// places are the labels of a page in points, as stationers cut them: three
// across, ten down on letter (1 by 2 5/8 in), eight down on A4 (33.9 by 63.5 mm).
func places(sheet paper.Sheet) (out [][4]float64) {
	left, top, w, h, right, down, rows := 13.5, 36.0, 189.0, 72.0, 198.0, 72.0, 10
	if sheet == paper.A4 {
		const mm = 72 / 25.4
		w, h, right, down, rows = 63.5*mm, 33.9*mm, 66.04*mm, 33.9*mm, 8
		left, top = (210*mm-2*right-w)/2, (297*mm-7*down-h)/2
	}
	for y := range rows {
		for x := range 3 {
			out = append(out, [4]float64{left + float64(x)*right, top + float64(y)*down, w, h})
		}
	}
	return out
}

func TestEveryLabelIsReadFromASoiledPageAt150DotsAnInch(t *testing.T) {
	const dpi = 150
	pic := demo(t, -1)
	for _, c := range []struct {
		file, rig string
		sheet     paper.Sheet
		reader    gozxing.Reader
	}{
		{"labels-qr_R41.pdf", "R41", paper.Letter, qrcode.NewQRCodeReader()}, {"labels-bars_R41.pdf", "R41", paper.Letter, oned.NewCode128Reader()},
		{"labels-qr_E42.pdf", "E42", paper.A4, qrcode.NewQRCodeReader()}, {"labels-bars_E42.pdf", "E42", paper.A4, oned.NewCode128Reader()},
	} {
		o := options(0)
		o.Sheet = c.sheet
		want := labelled(pic.State.Dept, c.rig)
		all := len(want)
		r := rand.New(rand.NewSource(41))
		for n, page := range rendered(t, printed(t, find(t, paper.All(pic, o), c.file)), dpi) {
			soil(page, r)
			for i, at := range places(c.sheet) {
				px := func(points float64) int { return int(points * dpi / 72) }
				cut := smooth(page, image.Rect(px(at[0]), px(at[1]), px(at[0]+at[2]), px(at[1]+at[3])))
				if len(want) == 0 {
					break // the rest of the last sheet is blank
				}
				got, err := read(cut, c.reader)
				if err != nil {
					t.Errorf("%s: label %d of page %d is not read: %v", c.file, i+1, n+1, err)
					continue
				}
				if !want[got] {
					t.Errorf("%s: label %d of page %d is %q", c.file, i+1, n+1, got)
				}
				delete(want, got)
				what, id, err := code.Find(pic.State.Dept, got)
				if err != nil || id == "" || what != code.Piece && what != code.Slot {
					t.Errorf("%q is not found again: %v", got, err)
				}
			}
		}
		if len(want) > 0 || all < 60 {
			t.Errorf("%s: %d of %d labels were not there: %v", c.file, len(want), all, want)
		}
	}
}

func TestEveryLabelOfTheDemoIsWhatAnotherReaderReads(t *testing.T) {
	d := demo(t, -1).State.Dept
	var labels []string
	for i := range d.Items {
		labels = append(labels, code.Label(code.Piece, d.Items[i].ID))
	}
	for i := range d.Slots {
		labels = append(labels, code.Label(code.Slot, d.Slots[i].ID))
	}
	for _, l := range labels {
		b, err := qr.Encode(l, qr.M, qr.Auto)
		if err != nil {
			t.Fatal(err)
		}
		got, err := decoder.NewDecoder().Decode(matrix(t, b), nil)
		if err != nil || got.GetText() != l {
			t.Errorf("the QR symbol of %s is read as %v, %v", l, got, err)
		}
		if b, err = code128.Encode(l); err != nil {
			t.Fatal(err)
		}
		bars := image.NewGray(image.Rect(0, 0, b.Bounds().Dx()+20, 16))
		for i := range bars.Pix {
			bars.Pix[i] = 255
			if x := i%bars.Stride - 10; x >= 0 && x < b.Bounds().Dx() {
				bars.Pix[i] = color.GrayModel.Convert(b.At(x, 0)).(color.Gray).Y
			}
		}
		if got, err := read(bars, oned.NewCode128Reader()); err != nil || got != l {
			t.Errorf("the bars of %s are read as %q, %v", l, got, err)
		}
	}
	if len(labels) < 350 {
		t.Errorf("%d labels", len(labels))
	}
}

func TestTheLongestAndStrangestIdsHaveLabelsThatAreRead(t *testing.T) {
	ids := []string{"A", "0", "ABCDEFGHIJKLMN", "R41-0000-00001", "a very long id in small letters", "斧 1", "X~*$=", "00000000000000"}
	d := &model.Department{Rigs: []model.Rig{{ID: "R1"}}}
	for _, id := range ids {
		d.Items = append(d.Items, model.Item{ID: id, Name: "Piece", Rig: "R1", Kind: model.Piece, Quantity: 1, LeastUsable: model.Blank})
	}
	pic := of(d)
	for file, reader := range map[string]gozxing.Reader{"labels-qr_R1.pdf": qrcode.NewQRCodeReader(), "labels-bars_R1.pdf": oned.NewCode128Reader()} {
		const dpi = 300
		page := rendered(t, printed(t, find(t, paper.All(pic, options(0)), file)), dpi)[0]
		for i, at := range places(paper.Letter)[:len(ids)] {
			px := func(points float64) int { return int(points * dpi / 72) }
			got, err := read(page.SubImage(image.Rect(px(at[0]), px(at[1]), px(at[0]+at[2]), px(at[1]+at[3]))), reader)
			if want := code.Label(code.Piece, ids[i]); err != nil || got != want {
				t.Errorf("%s: %q is read as %q, want %q: %v", file, ids[i], got, want, err)
			}
		}
	}
}

// The worked example of ISO/IEC 15417 that is copied widely: PJJ123C has the
// check 55 in code set B and 54 in code set A.
func TestCode128HasThePublishedCheck(t *testing.T) {
	b, err := code128.Encode("PJJ123C")
	if err != nil {
		t.Fatal(err)
	}
	if n := b.CheckSum(); n != 55 && n != 54 {
		t.Errorf("the check is %d", n)
	}
	// Start, seven characters and the check of 11 modules each, the stop of 13.
	if n := b.Bounds().Dx(); n != 9*11+13 {
		t.Errorf("%d modules", n)
	}
	if b, err = code128.Encode("A"); err != nil || b.CheckSum() != 34 { // start B: 104 + 33, mod 103
		t.Errorf("A has the check %d, %v", b.CheckSum(), err)
	}
}

// matrix is a symbol as the other library takes it.
func matrix(tb testing.TB, b barcode.Barcode) *gozxing.BitMatrix {
	tb.Helper()
	n := b.Bounds().Dx()
	m, err := gozxing.NewSquareBitMatrix(n)
	if err != nil {
		tb.Fatal(err)
	}
	for y := range n {
		for x := range n {
			if color.GrayModel.Convert(b.At(x, y)).(color.Gray).Y < 128 {
				m.Set(x, y)
			}
		}
	}
	return m
}

// ISO/IEC 18004: the data and error correction of HELLO WORLD and of 01234567
// (the example of its annex) in version 1-M.
func TestQRHasThePublishedCodewords(t *testing.T) {
	for _, c := range []struct {
		text string
		mode qr.Encoding
		want []byte
	}{
		{"HELLO WORLD", qr.AlphaNumeric, []byte{32, 91, 11, 120, 209, 114, 220, 77, 67, 64, 236, 17, 236, 17, 236, 17, 196, 35, 39, 119, 235, 215, 231, 226, 93, 23}},
		{"01234567", qr.Numeric, []byte{16, 32, 12, 86, 97, 128, 236, 17, 236, 17, 236, 17, 236, 17, 236, 17, 165, 36, 212, 193, 237, 54, 199, 135, 44, 85}},
	} {
		b, err := qr.Encode(c.text, qr.M, c.mode)
		if err != nil {
			t.Fatal(err)
		}
		if n := b.Bounds().Dx(); n != 21 {
			t.Fatalf("%d modules, not version 1", n)
		}
		p, err := decoder.NewBitMatrixParser(matrix(t, b))
		if err != nil {
			t.Fatal(err)
		}
		got, err := p.ReadCodewords()
		if err != nil || !bytes.Equal(got, c.want) {
			t.Errorf("%s: %v, %v", c.text, got, err)
		}
	}
}

func TestALabelSaysNothingButTheId(t *testing.T) {
	d := big(3, func(int) string { return "Jane's own saw" })
	for _, file := range []string{"labels-qr_R1.pdf", "labels-bars_R1.pdf"} {
		got := text(t, of(d), options(0), file)
		if !strings.Contains(got, code.Label(code.Piece, "R1-0001")) || !strings.Contains(got, code.Label(code.Slot, "R1-00")) {
			t.Errorf("%s: %s", file, got)
		}
	}
	if l := code.Label(code.Piece, "R1-0001"); strings.Contains(l, "saw") || len(l) != len("R1-0001")+2 {
		t.Error(l)
	}
}
