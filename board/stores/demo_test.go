package stores_test

import (
	"bytes"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"tarpside/assets"
	"tarpside/board/stores"
	"tarpside/model"
)

// names are the tables that a department has.
var names = []string{"rigs", "slots", "items", "stow_rules", "checks", "members", "agencies", "places", "stock", "pull_lists"}

func demoFS(t testing.TB) fs.FS {
	t.Helper()
	sub, err := fs.Sub(assets.Demo, "demo")
	if err != nil {
		t.Fatal(err)
	}
	return sub
}

// demoFiles are the tables of the demo, to be spoilt.
func demoFiles(t testing.TB) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	for _, n := range names {
		b, err := fs.ReadFile(demoFS(t), n+".csv")
		if err != nil {
			t.Fatal(err)
		}
		files[n+".csv"] = &fstest.MapFile{Data: b}
	}
	return files
}

func mustRead(t testing.TB, fsys fs.FS) *model.Department {
	t.Helper()
	d, problems := stores.Read(fsys)
	if err := problems.Err(); err != nil {
		t.Fatalf("read:\n%v", err)
	}
	return d
}

func TestDemoTablesReadWithoutProblems(t *testing.T) {
	d := mustRead(t, demoFS(t))
	pieces, kits := 0, 0
	for _, it := range d.Items {
		pieces += it.Quantity
		if it.Kind == model.Kit {
			kits++
		}
	}
	for _, c := range []struct {
		what      string
		got, want int
	}{
		{"rigs", len(d.Rigs), 4}, {"slots", len(d.Slots), 44}, {"items", len(d.Items), 325},
		{"pieces", pieces, 1007}, {"kits", kits, 28}, {"stow rules", len(d.Rules), 33},
		{"checks", len(d.Checks), 15}, {"members", len(d.Members), 21}, {"agencies", len(d.Agencies), 6},
		{"places", len(d.Places), 4}, {"stock lines", len(d.Stock), 22}, {"pull lines", len(d.Pulls), 116},
	} {
		if c.got != c.want {
			t.Errorf("%s: %d, want %d", c.what, c.got, c.want)
		}
	}
	if w := stores.Warnings(d); len(w) > 0 {
		t.Errorf("warnings: %v", w)
	}
}

func TestDemoRowsComeInCellByCell(t *testing.T) {
	d := mustRead(t, demoFS(t))
	light := d.Item("R41-184")
	if light == nil || !reflect.DeepEqual(light.Checks, []model.Ask{{Check: "bars", Limit: 3, HasLimit: true}, {Check: "function"}}) {
		t.Errorf("R41-184: %+v", light)
	}
	if got := d.Item("P71-002").OtherNames; !slices.Equal(got, []string{"rescue cutter", "hydraulic cutter"}) {
		t.Errorf("other names of P71-002: %q", got)
	}
	if got := *d.Slot("R41-T2-X"); !reflect.DeepEqual(got, model.Slot{ID: "R41-T2-X", Rig: "R41", Compartment: "T2", Side: "through",
		Description: "centre, behind both trays", HandHeightIn: 30, Depth: 2, Lap: 2}) {
		t.Errorf("slot: %+v", got)
	}
	type rule struct {
		number    bool
		min, max  float64
		words     string
		never     bool
		neverWord string
	}
	for id, want := range map[string]rule{
		"oxygen": {number: true, max: 3000, never: true},
		"bars":   {number: true, max: 4},
		"count":  {words: "yes short no"},
		"clean":  {words: "yes no", neverWord: "blood"},
		"rope":   {words: "yes no", never: true},
	} {
		c := d.Check(id)
		if got := (rule{c.Number, c.Min, c.Max, strings.Join(c.Words, " "), c.Never, c.NeverWord}); got != want {
			t.Errorf("check %s: %+v, want %+v", id, got, want)
		}
	}
}

func TestDemoTablesAreWrittenByteForByte(t *testing.T) {
	d := mustRead(t, demoFS(t))
	for _, n := range names {
		var b bytes.Buffer
		if err := stores.WriteTo(&b, n, d); err != nil {
			t.Fatal(err)
		}
		want, err := fs.ReadFile(demoFS(t), n+".csv")
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(b.Bytes(), want) {
			t.Errorf("%s is written differently", n)
		}
	}
	if err := stores.WriteTo(&bytes.Buffer{}, "rig", d); err == nil {
		t.Error("a table that is not there is written")
	}
}

// shuffled turns the columns of a table round, with a column of our own
// between them, LF and a byte order mark, as another program may save it.
func shuffled(t *testing.T, data []byte, own string) []byte {
	t.Helper()
	rows := stores.Rows(data)
	for i := range rows {
		cell := own
		if i > 0 {
			cell = ""
			if i%3 == 0 {
				cell = "shelf \"A\", line\r\n" + rows[i][0]
			}
		}
		slices.Reverse(rows[i])
		rows[i] = slices.Insert(rows[i], 1, cell)
	}
	var b bytes.Buffer
	b.WriteString("\xef\xbb\xbf")
	for _, cells := range rows {
		for j, c := range cells {
			if j > 0 {
				b.WriteByte(',')
			}
			b.WriteString(`"` + strings.ReplaceAll(c, `"`, `""`) + `"`)
		}
		b.WriteByte('\n')
	}
	return b.Bytes()
}

func TestRoundTripKeepsEverythingWithShuffledColumnsMarkAndExtras(t *testing.T) {
	files := demoFiles(t)
	for name, f := range files {
		f.Data = shuffled(t, f.Data, "serial_no")
		files[name] = f
	}
	d := mustRead(t, files)
	if got := d.Items[2].Extra; !maps.Equal(got, map[string]string{"serial_no": "shelf \"A\", line\r\nR41-003"}) {
		t.Errorf("extra cells of the third line: %q", got)
	}
	if d.Items[0].Extra != nil {
		t.Errorf("blank extra cells: %q", d.Items[0].Extra)
	}
	dir := t.TempDir()
	if err := stores.Write(dir, d); err != nil {
		t.Fatal(err)
	}
	if again := mustRead(t, os.DirFS(dir)); !reflect.DeepEqual(again, d) {
		t.Error("the department changed on the way out and in")
	}
	plain := mustRead(t, demoFS(t))
	for i := range plain.Items {
		d.Items[i].Extra = nil
	}
	if !reflect.DeepEqual(plain.Items, d.Items) {
		t.Error("the order of columns matters")
	}
}

func TestWriteReplacesFilesAndLeavesNothingBeside(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new")
	d := mustRead(t, demoFS(t))
	for range 2 {
		if err := stores.Write(dir, d); err != nil {
			t.Fatal(err)
		}
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	if len(entries) != len(names) {
		t.Errorf("%d files, want %d: %v", len(entries), len(names), entries)
	}
}

func TestAFailedWriteLeavesEveryTableAsItWas(t *testing.T) {
	dir := t.TempDir()
	d := mustRead(t, demoFS(t))
	if err := stores.Write(dir, d); err != nil {
		t.Fatal(err)
	}
	before, err := os.ReadFile(filepath.Join(dir, "rigs.csv"))
	if err != nil {
		t.Fatal(err)
	}
	// A folder with something in it cannot be replaced by a file.
	if err := os.Remove(filepath.Join(dir, "rigs.csv")); err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Join(dir, "rigs.csv", "x"), 0o755); err != nil {
		t.Fatal(err)
	}
	items, err := os.ReadFile(filepath.Join(dir, "items.csv"))
	if err != nil || len(before) == 0 {
		t.Fatal(err)
	}
	less := d.Clone().Index()
	less.Items = less.Items[:10]
	if err := stores.Write(dir, less); err == nil || !strings.Contains(err.Error(), "rigs.csv") {
		t.Errorf("error: %v", err)
	}
	if now, err := os.ReadFile(filepath.Join(dir, "items.csv")); err != nil || !bytes.Equal(now, items) {
		t.Errorf("items.csv changed (%v)", err)
	}
	left, err := filepath.Glob(filepath.Join(dir, ".*.tmp"))
	if err != nil || len(left) > 0 {
		t.Errorf("left beside: %v %v", left, err)
	}
}

func TestTablesThatMayBeMissingAreEmpty(t *testing.T) {
	files := fstest.MapFS{
		"rigs.csv":   {Data: []byte("rig,name,agency,role,seats,mark_words,mark_shape,mark_color\nR1,Rescue 1,,,,,,\n")},
		"slots.csv":  {Data: []byte("slot,rig,compartment,side,description,hand_height_in,depth,lap\n")},
		"checks.csv": {Data: []byte("check,question,answer,passes,if_it_fails,override\n")},
		"items.csv":  {Data: []byte(itemsHead + "I1,Bar,,,R1,,piece,,,,,,,,,,,,,,\n\n,,,,,,,,,,,,,,,,,,,,\nI2,Flare,,,R1,,consumable,6,,,,,,YES, no ,,,4,,,\n")},
	}
	files["items.csv"].Data = bytes.Replace(files["items.csv"].Data, []byte(",,YES,"), []byte(",flare,YES,"), 1)
	d := mustRead(t, files)
	bar, flare := d.Item("I1"), d.Item("I2")
	if bar.Quantity != 1 || !bar.NoWeight || bar.LeastUsable != model.Blank || bar.Slot != "" || bar.Critical {
		t.Errorf("blank cells: %+v", bar)
	}
	if !flare.Critical || flare.TwoPerson || flare.LeastUsable != 4 {
		t.Errorf("yes and no: %+v", flare)
	}
	if len(d.Members)+len(d.Stock)+len(d.Rules)+len(d.Pulls) != 0 {
		t.Error("rows out of nowhere")
	}
	var b bytes.Buffer
	if err := stores.WriteTo(&b, "items", d); err != nil || !strings.Contains(b.String(), "\r\nI1,Bar,,,R1,,piece,1,,,,,,no,no,no,no,,0,,\r\n") {
		t.Errorf("written: %q, %v", b.String(), err)
	}
}

const itemsHead = "item,name,short_name,other_names,rig,slot,kind,quantity,unit,weight_lb,kit,checks,family,critical,two_person,small,dark,least_usable,order,stock,mark\n"

func TestWarningsNameMarksThatDoNotTellRigsApart(t *testing.T) {
	d := (&model.Department{Rigs: []model.Rig{
		{ID: "A", MarkWords: "two white rings, A", MarkShape: "circle", MarkColor: "white"},
		{ID: "B", MarkWords: "Two  white rings, A", MarkShape: "square", MarkColor: "white"},
		{ID: "C", MarkShape: "Circle", MarkColor: "WHITE"},
		{ID: "D", MarkShape: "diamond", MarkColor: "red"},
		{ID: "E"}, {ID: "F"},
	}}).Index()
	var got []string
	for _, w := range stores.Warnings(d) {
		got = append(got, w.String())
	}
	want := []string{
		"rigs.csv, row 3, column mark_words: A and B have the same mark in words: Two  white rings, A; right would be: words of its own",
		"rigs.csv, row 4, column mark_shape: A and C have the same mark: white circle; right would be: a shape or a colour of its own",
		"rigs.csv, row 5, column mark_shape: a diamond is a hazard placard; right would be: another shape, such as a circle, square, triangle or bars",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got:\n%s", strings.Join(got, "\n"))
	}
}
