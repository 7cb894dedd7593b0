package stores_test

import (
	"os"
	"strings"
	"testing"
	"time"

	"tarpside/assets"
	"tarpside/board/stores"
	"tarpside/model"
	"tarpside/model/tarpsheet"
)

const sceneHead = "seq,minute,device,verb,by,item,rig,quantity,from,to,holder,reading\n"

func TestTheDemoSceneIsReadWithoutItsTruthRows(t *testing.T) {
	data, err := assets.Demo.ReadFile("demo/scene.csv")
	if err != nil {
		t.Fatal(err)
	}
	rows, problems := stores.ReadScene("scene.csv", data)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	if len(rows) != 289 {
		t.Errorf("%d rows, want the 293 of the file less 4 truth rows", len(rows))
	}
	if r := rows[0]; r.Act.Verb != model.Open || r.Clock != "18:50" || r.Seen != model.Blank || r.Act.Quantity != model.Blank {
		t.Errorf("the first row is read as %+v", r)
	}
}

func TestASceneFileErrorIsNamedByRowAndColumnAndStopsTheImport(t *testing.T) {
	for name, c := range map[string]struct {
		data string
		want []stores.Problem // File is scene.csv; Right is not compared
	}{
		"nothing in it":           {"", []stores.Problem{{Row: 1}}},
		"a missing column":        {strings.Replace(sceneHead, "device,", "", 1), []stores.Problem{{Row: 1, Column: "device"}}},
		"a column twice":          {"seq," + sceneHead, []stores.Problem{{Row: 1, Column: "seq"}}},
		"an unknown verb":         {sceneHead + "1,0,A,fly,,,,,,,,\n", []stores.Problem{{Row: 2, Column: "verb"}}},
		"a seq that is no number": {sceneHead + "one,0,A,note,,,,,,,,\n", []stores.Problem{{Row: 2, Column: "seq"}}},
		"half a minute":           {sceneHead + "1,0.5,A,note,,,,,,,,\n", []stores.Problem{{Row: 2, Column: "minute"}}},
		"a quantity in words":     {sceneHead + "1,0,A,pull,,X,,two,,,,\n", []stores.Problem{{Row: 2, Column: "quantity"}}},
		"a seq twice":             {sceneHead + "1,0,A,note,,,,,,,,\n1,0,A,note,,,,,,,,\n", []stores.Problem{{Row: 3, Column: "seq"}}},
		"too few cells":           {sceneHead + "1,0,A\n", []stores.Problem{{Row: 2}, {Row: 2, Column: "verb"}}},
		"every bad row is named":  {sceneHead + "1,0,A,fly,,,,,,,,\n2,x,A,note,,,,,,,,\n", []stores.Problem{{Row: 2, Column: "verb"}, {Row: 3, Column: "minute"}}},
	} {
		rows, problems := stores.ReadScene("scene.csv", []byte(c.data))
		if rows != nil {
			t.Errorf("%s: rows came in all the same", name)
		}
		if len(problems) != len(c.want) {
			t.Errorf("%s: %v", name, problems)
			continue
		}
		for i, p := range problems {
			if p.File != "scene.csv" || p.Row != c.want[i].Row || p.Column != c.want[i].Column || p.Wrong == "" || p.Right == "" {
				t.Errorf("%s: %+v, want row %d column %q with what is wrong and what would be right", name, p, c.want[i].Row, c.want[i].Column)
			}
		}
	}
}

func TestColumnsOfASceneStandInAnyOrderAndSeenMayBeMissing(t *testing.T) {
	data := "\xef\xbb\xbfreading,verb,seq,minute,device,by,item,rig,quantity,from,to,holder,extra\r\n" +
		"clean=yes,stow,2,1,B,M1,X-1,,3,tarp,home,,kept\r\n,open,1,0,A,,,,,,,,\r\n"
	rows, problems := stores.ReadScene("scene.csv", []byte(data))
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	if len(rows) != 2 || rows[0].Seq != 1 || rows[1].Act.Reading != "clean=yes" || rows[1].Act.Quantity != 3 || rows[1].Seen != model.Blank {
		t.Errorf("read as %+v", rows)
	}
}

func FuzzReadScene(f *testing.F) {
	data, err := assets.Demo.ReadFile("demo/scene.csv")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(data)
	for _, dir := range []string{"01_counts", "02_devices", "04_asis"} {
		wild, err := os.ReadFile("../../testdata/scenes/" + dir + "/scene.csv")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(wild)
	}
	f.Add([]byte(sceneHead + "1,0,A,\"no\nte\",,,,,,,,\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		rows, problems := stores.ReadScene("scene.csv", data)
		if len(problems) > 0 && rows != nil {
			t.Fatal("rows beside problems")
		}
		last := -1 << 62
		for _, r := range rows {
			if r.Seq <= last {
				t.Fatalf("seq %d after %d", r.Seq, last)
			}
			last = r.Seq
			if r.Act.Verb == "" || r.Device == "" || r.Row < 2 {
				t.Fatalf("a row without verb, device or number: %+v", r)
			}
		}
	})
}

// FuzzReadSheet: a tarp sheet that was typed in is problems or lines, and what
// the lines mean is faults or acts in order of time, whatever is in them.
func FuzzReadSheet(f *testing.F) {
	f.Add([]byte("time,quantity,piece,rig,from,to,who\n19:05,4,A,R41,tarp,V1,M1\n?,?,?,,,unknown,?\n"))
	f.Add([]byte("sep=;\r\ntime;quantity;piece;to;who\r\n52;1;Strut;at:V9;crew\r\n"))
	f.Add([]byte("time,quantity,piece,to,who\n99:99,-1,zzz,\"no\nwhere\",\n"))
	d := mustRead(f, spikedFiles(nil))
	start := time.Date(2026, 11, 14, 18, 50, 0, 0, time.UTC)
	f.Fuzz(func(t *testing.T, data []byte) {
		lines, problems := stores.ReadSheet("sheet.csv", data)
		if len(problems) > 0 {
			if lines != nil {
				t.Fatal("lines in spite of problems")
			}
			return
		}
		now := start.Add(5 * time.Hour)
		written, faults := tarpsheet.Read(d, start, now, lines)
		if len(written)+len(faults) < len(lines) && len(faults) == 0 {
			blank := 0
			for _, l := range lines {
				if strings.TrimSpace(l.Time+l.Quantity+l.Piece+l.Rig+l.From+l.To+l.Who) == "" {
					blank++
				}
			}
			if len(written)+blank != len(lines) {
				t.Fatalf("%d of %d lines are left, and no fault", len(written), len(lines))
			}
		}
		for i, w := range tarpsheet.ByTime(written) {
			if w.Time.Before(start.Truncate(time.Minute)) || w.Time.After(now) {
				t.Fatalf("line %d is at %s", i, w.Time)
			}
		}
	})
}
