package stores_test

import (
	"bytes"
	"fmt"
	"reflect"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/xuri/excelize/v2"
	"pgregory.net/rapid"

	"tarpside/board/stores"
	"tarpside/model"
)

func workbook(t testing.TB, d *model.Department) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := stores.WriteWorkbook(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func readWorkbook(t testing.TB, data []byte) *model.Department {
	t.Helper()
	d, problems := stores.ReadWorkbook("stores.xlsx", data)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	return d
}

// hostile are cells that a spreadsheet would like to make something else of.
var hostile = []string{"=1+1", "+15550100", "-5", "@SUM(A1)", "\t=1", "\r=1", "'=1", "''-", "'", "=cmd|' /C calc'!A0",
	"007", "1e5", "3-4", "12/11", "TRUE", "1,5", "26.50", "_x0041_", "#N/A", " blanks ", "two\nlines", "Ďáblík 雪 🪓", "ﬁ", "＝1"}

// spiked is the small department with a hostile cell in many places.
func spiked(t testing.TB) *model.Department {
	t.Helper()
	d := mustRead(t, spikedFiles(nil))
	for i, cell := range hostile {
		d.Places = append(d.Places, model.PlaceName{Place: fmt.Sprintf("P%d", i), Meaning: cell, Extra: map[string]string{"label": cell}})
	}
	return d.Index()
}

func TestAWorkbookBringsTheSameDepartmentBack(t *testing.T) {
	for _, d := range []*model.Department{mustRead(t, demoFS(t)), spiked(t)} {
		if got := readWorkbook(t, workbook(t, d)); !reflect.DeepEqual(got, d) {
			_, changes := stores.Diff(d, got)
			t.Errorf("it changed on the way: %v", changes)
		}
	}
}

func TestAnyTextSurvivesAWorkbookOrIsRefusedByName(t *testing.T) {
	base := spiked(t)
	rapid.Check(t, func(t *rapid.T) {
		d := base.Clone()
		text := rapid.OneOf(rapid.String(), rapid.StringOf(rapid.SampledFrom([]rune("=+-@'\t\r\n_x0041 \x01\ufffe\"<&;,1.5eE"))))
		d.Places[0].Meaning = text.Draw(t, "meaning")
		d.Items[0].Name = "n" + text.Draw(t, "name")
		d.Index()
		var b bytes.Buffer
		err := stores.WriteWorkbook(&b, d)
		if bad := d.Places[0].Meaning + d.Items[0].Name; err != nil {
			if !strings.Contains(err.Error(), "sheet ") || !strings.ContainsFunc(bad, func(r rune) bool { return r < ' ' || r >= 0xfffe }) {
				t.Fatalf("%q: %v", bad, err)
			}
			return
		}
		got, problems := stores.ReadWorkbook("x.xlsx", b.Bytes())
		if err := problems.Err(); err != nil {
			t.Fatal(err)
		}
		if _, changes := stores.Diff(d, got); len(changes) > 0 {
			t.Fatalf("%v", changes)
		}
	})
}

func TestACellThatIsTooLongForAWorkbookIsNamed(t *testing.T) {
	d := spiked(t)
	d.Places[0].Meaning = strings.Repeat("x", 40000)
	err := stores.WriteWorkbook(&bytes.Buffer{}, d.Index())
	if err == nil || !strings.Contains(err.Error(), "sheet places, row 2, column meaning") {
		t.Errorf("%v", err)
	}
}

// edited opens a workbook of the small department, changes it and saves it.
func edited(t *testing.T, change func(f *excelize.File) error) []byte {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(workbook(t, spiked(t))))
	if err != nil {
		t.Fatal(err)
	}
	if err := change(f); err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestBadRowsOfAWorkbookAreNamedBySheetRowAndColumn(t *testing.T) {
	data := edited(t, func(f *excelize.File) error {
		date, err := f.NewStyle(&excelize.Style{NumFmt: 14})
		if err != nil {
			return err
		}
		for _, set := range []error{
			f.SetCellValue("items", "J2", "heavy"),
			f.SetCellValue("items", "E3", "R14"),
			f.SetCellValue("rigs", "B2", nil),
			f.SetCellValue("slots", "C2", time.Date(2026, 4, 3, 0, 0, 0, 0, time.UTC)),
			f.SetCellStyle("slots", "C2", "C2", date),
			f.SetCellFormula("stock", "C2", "1+1"),
			f.SetCellValue("stock", "C2", nil),
		} {
			if set != nil {
				return set
			}
		}
		return f.SetCellFormula("stock", "C2", "1+1")
	})
	d, problems := stores.ReadWorkbook("ours.xlsx", data)
	want := []string{
		`ours.xlsx, sheet rigs, row 2, column name: blank`,
		`ours.xlsx, sheet slots, row 2, column compartment: a spreadsheet has made the date 2026-04-03 of what was typed`,
		`ours.xlsx, sheet items, row 2, column weight_lb: "heavy" is not a number`,
		`ours.xlsx, sheet items, row 3, column rig: there is no "R14"`,
		`ours.xlsx, sheet stock, row 2, column on_hand: a formula without its value`,
	}
	if d != nil || len(problems) != len(want) {
		t.Fatalf("got:\n%v", problems)
	}
	for i, p := range problems {
		if !strings.HasPrefix(p.String(), want[i]) {
			t.Errorf("%s\nwant %s", p, want[i])
		}
	}
}

func TestCellsAreReadAsAPersonSeesThem(t *testing.T) {
	data := edited(t, func(f *excelize.File) error {
		date, err := f.NewStyle(&excelize.Style{NumFmt: 14})
		if err != nil {
			return err
		}
		code := `[$-409]d" of "mmm\ yyyy`
		own, err := f.NewStyle(&excelize.Style{CustomNumFmt: &code})
		if err != nil {
			return err
		}
		for _, set := range []error{
			f.SetCellValue("rigs", "I1", "tested"),
			f.SetCellFloat("rigs", "I2", 46351, -1, 64),
			f.SetCellStyle("rigs", "I2", "I2", date),
			f.SetCellValue("items", "V1", "next"), f.SetCellValue("items", "W1", "serial"), f.SetCellValue("items", "X1", "loan"),
			f.SetCellFloat("items", "V2", 46351.75, -1, 64),
			f.SetCellStyle("items", "V2", "V2", own),
			f.SetCellInt("items", "W2", 123456789012),
			f.SetCellBool("items", "X2", true),
			f.SetCellValue("items", "J2", "26,5"),                     // typed as text, with the other decimal sign
			f.SetCellFloat("items", "J3", 1.1000000000000001, -1, 64), // as a spreadsheet keeps 1.1
			f.SetCellBool("items", "O2", true),
			f.SetCellFormula("items", "J6", "1.5*2"),
		} {
			if set != nil {
				return set
			}
		}
		return nil
	})
	data = withValue(t, data)
	d := readWorkbook(t, data)
	it := d.Items[0]
	for _, c := range []struct{ what, got, want string }{
		{"a date", d.Rigs[0].Extra["tested"], "2026-11-25"},
		{"a date with its time", it.Extra["next"], "2026-11-25 18:00"},
		{"a long number", it.Extra["serial"], "123456789012"},
		{"yes or no as a tick", it.Extra["loan"], "yes"},
		{"a decimal comma", fmt.Sprint(it.WeightLb), "26.5"},
		{"a fraction", fmt.Sprint(d.Items[1].WeightLb), "1.1"},
		{"a tick in our column", fmt.Sprint(it.TwoPerson), "true"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.what, c.got, c.want)
		}
	}
}

// withValue gives the formula of items!J6 the value that a spreadsheet would.
func withValue(t *testing.T, data []byte) []byte {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	if err := f.SetCellFloat("items", "J6", 3, -1, 64); err != nil {
		t.Fatal(err)
	}
	if err := f.SetCellFormula("items", "J6", "1.5*2"); err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestATableOfSemicolonsAndDecimalCommasIsReadAsItIsMeant(t *testing.T) {
	want := mustRead(t, spikedFiles(nil))
	for name, slots := range map[string]string{
		"semicolons, with a mark and blank cells behind": "\xef\xbb\xbfslot;rig;compartment;side;description;hand_height_in;depth;lap;\r\nS1;R41;T2;left;tray;26,5;0;2;\r\nS2;R41;T2;right;tray;26,0;0;8;\r\nS3;R41;T2;through;centre;30;2;2;\r\n;;;;;;;;\r\n",
		"the separator said outright":                    "sep=;\r\nslot;rig;compartment;side;description;hand_height_in;depth;lap\r\nS1;R41;T2;left;tray;26,50;0;2\r\nS2;R41;T2;right;tray;26;0;8\r\nS3;R41;T2;through;centre;30;2;2\r\n",
		"tabs":                                           strings.ReplaceAll(few["slots"], ",", "\t"),
		"commas, and a decimal comma in quotes":          strings.Replace(few["slots"], "26.5", `"26,5"`, 1),
	} {
		got := mustRead(t, spikedFiles(map[string]string{"slots": slots}))
		if _, changes := stores.Diff(want, got); len(changes) > 0 {
			t.Errorf("%s: %v", name, changes)
		}
	}
	_, problems := stores.Read(spikedFiles(map[string]string{
		"slots": "sep=;\nslot;rig;compartment;side;description;hand_height_in;depth;lap\nS1;R41;T2;left;tray;1.500;0;2\nS2;R41;T2;right;tray;26;0;8\nS3;R41;T2;through;centre;30;2;2\n"}))
	if len(problems) != 1 || problems[0].Row != 3 || problems[0].Column != "hand_height_in" || !strings.Contains(problems[0].Wrong, "two ways") {
		t.Errorf("1.500 where the comma is the decimal sign: %v", problems)
	}
}

// spikedFiles are the tables of the small department, some replaced.
func spikedFiles(other map[string]string) fstest.MapFS {
	files := fstest.MapFS{}
	for n, text := range few {
		files[n+".csv"] = &fstest.MapFile{Data: []byte(text)}
	}
	for n, text := range other {
		files[n+".csv"] = &fstest.MapFile{Data: []byte(text)}
	}
	return files
}

func TestWhatIsNoWorkbookIsSaidInWords(t *testing.T) {
	whole := workbook(t, spiked(t))
	for name, data := range map[string][]byte{"empty": nil, "text": []byte("rig,name\n"), "half": whole[:len(whole)/2]} {
		d, problems := stores.ReadWorkbook("x.xlsx", data)
		if d != nil || len(problems) != 1 || !strings.Contains(problems.Error(), "no XLSX workbook") {
			t.Errorf("%s: %v", name, problems)
		}
	}
}

// many is a department of n lines.
func many(t testing.TB, n int) *model.Department {
	d := spiked(t)
	for i := range n {
		it := d.Items[3]
		it.ID, it.Name = fmt.Sprintf("N-%05d", i), fmt.Sprintf("Wedge %d", i)
		it.Extra = map[string]string{"serial": fmt.Sprint(i)}
		d.Items = append(d.Items, it)
	}
	return d.Index()
}

func BenchmarkWorkbook10kRows(b *testing.B) {
	d := many(b, 10_000)
	data := workbook(b, d)
	b.Run("write", func(b *testing.B) {
		for b.Loop() {
			if err := stores.WriteWorkbook(&bytes.Buffer{}, d); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("read", func(b *testing.B) {
		for b.Loop() {
			if _, problems := stores.ReadWorkbook("x.xlsx", data); problems != nil {
				b.Fatal(problems)
			}
		}
	})
}

// FuzzReadWorkbook: whatever the bytes, it never panics, and gives a
// department or problems, never both.
func FuzzReadWorkbook(f *testing.F) {
	whole := workbook(f, spiked(f))
	f.Add(whole)
	f.Add(whole[:len(whole)-9])
	f.Add([]byte("PK\x03\x04"))
	f.Fuzz(func(t *testing.T, data []byte) {
		d, problems := stores.ReadWorkbook("x.xlsx", data)
		if (d == nil) != (len(problems) > 0) {
			t.Fatalf("a department: %v, and %d problems", d != nil, len(problems))
		}
	})
}
