package stores_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/xuri/excelize/v2"

	"tarpside/board/stores"
	"tarpside/model"
)

// office runs LibreOffice, a spreadsheet that is not ours, on a file.
func office(t *testing.T, to, file string) string {
	t.Helper()
	out := t.TempDir()
	cmd := exec.Command("soffice", "-env:UserInstallation=file://"+t.TempDir(), "--headless", "--convert-to", to, "--outdir", out, file)
	if said, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("LibreOffice (package libreoffice-calc-nogui) did not convert %s: %v\n%s", file, err, said)
	}
	return out
}

func TestLibreOfficeOpensWhatWeWriteAndWeReadWhatItWrites(t *testing.T) {
	d := spiked(t)
	// It gives back a carriage return as a line feed, as XML says.
	for i := range d.Places {
		p := &d.Places[i]
		p.Meaning = strings.ReplaceAll(p.Meaning, "\r", "\n")
		p.Extra = map[string]string{"label": p.Meaning}
		if p.Meaning == "" {
			p.Extra = nil
		}
	}
	d.Index()
	file := filepath.Join(t.TempDir(), "stores.xlsx")
	if err := os.WriteFile(file, workbook(t, d), 0o600); err != nil {
		t.Fatal(err)
	}
	again, err := os.ReadFile(filepath.Join(office(t, "xlsx:Calc MS Excel 2007 XML", file), "stores.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	if _, changes := stores.Diff(d, readWorkbook(t, again)); len(changes) > 0 {
		t.Errorf("saved by LibreOffice, %v", changes)
	}

	// Field separator, text delimiter, character set, first line, columns,
	// language, quote all text, detect numbers, as shown, formulas, strip, every sheet.
	const semicolons = "csv:Text - txt - csv (StarCalc):59,34,76,1,,0,false,true,true,false,false,-1"
	dir := office(t, semicolons, file)
	files := fstest.MapFS{}
	for _, n := range names {
		data, err := os.ReadFile(filepath.Join(dir, "stores-"+n+".csv"))
		if err != nil {
			t.Fatal(err)
		}
		if n == "slots" && !bytes.Contains(data, []byte(";tray;")) {
			t.Errorf("no semicolons: %s", data)
		}
		files[n+".csv"] = &fstest.MapFile{Data: data}
	}
	got, problems := stores.Read(files)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	_, changes := stores.Diff(d, got)
	for _, c := range changes { // a raw apostrophe and sign is read as our own way of writing the sign
		if c.Table != model.TablePlaces || !strings.HasPrefix(c.Columns[0].Old, "'") {
			t.Errorf("as CSV from LibreOffice, %s", c)
		}
	}
}

func TestSpreadsheetsComputeNothingOfWhatWeWriteAsCSV(t *testing.T) {
	d := spiked(t)
	var b bytes.Buffer
	if err := stores.WriteTo(&b, model.TablePlaces, d); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "places.csv")
	if err := os.WriteFile(file, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	dir := office(t, "xlsx:Calc MS Excel 2007 XML", file)
	f, err := excelize.OpenFile(filepath.Join(dir, "places.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet)
		if err != nil || len(rows) != len(d.Places)+1 {
			t.Fatalf("%d rows, %v", len(rows), err)
		}
		for r, row := range rows {
			for c := range row {
				at, _ := excelize.CoordinatesToCellName(c+1, r+1)
				if formula, err := f.GetCellFormula(sheet, at); formula != "" || err != nil {
					t.Errorf("%s computes %q (%v)", at, formula, err)
				}
			}
		}
	}
}
