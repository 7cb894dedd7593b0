package paper_test

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tarpside/board"
	"tarpside/board/paper"
	"tarpside/model"
	"tarpside/model/code"
)

func TestEveryPageSaysWhatItIsOfWhichRigAndSceneWhenAndWhichOfHowMany(t *testing.T) {
	pic := demo(t, 180)
	for _, sheet := range []paper.Sheet{paper.Letter, paper.A4} {
		o := options(180)
		o.Sheet = sheet
		for _, p := range paper.All(pic, o) {
			doc := printed(t, p)
			all := pages(t, doc)
			rig := "all"
			if _, behind, ok := strings.Cut(strings.TrimSuffix(p.File, ".pdf"), "_"); ok {
				rig = "(" + behind + ")"
			}
			for i, page := range all {
				for _, want := range []string{p.Title, rig, "Two-car crash, Sawpit Bridge Road", "printed 2026-11-14 21:50 EST",
					fmt.Sprintf("Page %d of %d ", i+1, len(all)), "inventory " + paper.Inventory(pic.State.Dept)} {
					if !strings.Contains(flat(page), want) {
						t.Errorf("%s on %s, page %d does not say %q", p.File, sheet.Name, i+1, want)
					}
				}
			}
			inside(t, p.File, doc, sheet)
		}
	}
}

var (
	bboxPage = regexp.MustCompile(`<page width="([0-9.]+)" height="([0-9.]+)"`)
	bboxWord = regexp.MustCompile(`<word xMin="([0-9.-]+)" yMin="([0-9.-]+)" xMax="([0-9.-]+)" yMax="([0-9.-]+)">(.*)</word>`)
)

// inside checks the size of the pages, and that no word stands where printers
// do not print: nearer than a sixth of an inch to an edge.
func inside(t *testing.T, name string, doc []byte, sheet paper.Sheet) {
	t.Helper()
	number := func(s string) float64 {
		f, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	out := poppler(t, doc, "pdftotext", "-bbox")
	sizes := bboxPage.FindAllStringSubmatch(out, -1)
	if len(sizes) == 0 {
		t.Errorf("%s has no page", name)
	}
	for _, s := range sizes {
		if w, h := number(s[1]), number(s[2]); w-sheet.Width > 0.1 || sheet.Width-w > 0.1 || h-sheet.Height > 0.1 || sheet.Height-h > 0.1 {
			t.Errorf("%s: a page of %g by %g points is not %s", name, w, h, sheet.Name)
		}
	}
	const edge = 12
	for _, w := range bboxWord.FindAllStringSubmatch(out, -1) {
		if number(w[1]) < edge || number(w[2]) < edge || number(w[3]) > sheet.Width-edge || number(w[4]) > sheet.Height-edge {
			t.Errorf("%s: %q stands at the edge of the paper", name, w[5])
		}
	}
}

func TestTheSameInputMakesTheSameBytes(t *testing.T) {
	pic := demo(t, 125)
	again := paper.All(pic, options(125))
	for i, p := range paper.All(pic, options(125)) {
		one := printed(t, p)
		if !bytes.Equal(one, printed(t, p)) || !bytes.Equal(one, printed(t, again[i])) {
			t.Errorf("%s is not the same twice", p.File)
		}
		if later := paper.All(pic, options(126))[i]; bytes.Equal(one, printed(t, later)) {
			t.Errorf("%s does not change with the time of printing", p.File)
		}
	}
}

func TestPapersOfOneRigAreThoseOfThatRig(t *testing.T) {
	pic := demo(t, 60)
	o := options(60)
	o.Rig = "E42"
	var files []string
	for _, p := range paper.All(pic, o) {
		files = append(files, p.File)
	}
	want := []string{"tarp.pdf", "closeout.pdf", "restock.pdf", "tags.pdf", "lost.pdf", "activity.pdf", "release_E42.pdf",
		"putback_E42.pdf", "open_E42.pdf", "slots_E42.pdf", "labels-qr_E42.pdf", "labels-bars_E42.pdf"}
	if !slices.Equal(files, want) {
		t.Errorf("%q", files)
	}
}

// lineOf finds the printed line that has all the words.
func lineOf(text string, words ...string) bool {
	for _, l := range strings.Split(text, "\n") {
		if !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(flat(l), w) }) {
			return true
		}
	}
	return false
}

func TestSlotSheetsNameEveryPieceOfTheRigOnceUnderItsSlot(t *testing.T) {
	pic := demo(t, -1)
	for _, r := range pic.State.Dept.Rigs {
		sheet := text(t, pic, options(0), "slots_"+r.ID+".pdf")
		for _, it := range pic.State.Dept.Items {
			if it.Rig != r.ID {
				continue
			}
			if n := strings.Count(sheet, it.ID); n != 1 {
				t.Errorf("%s stands %d times on the slot sheets", it.ID, n)
			}
			if !lineOf(sheet, it.ID, strconv.Itoa(it.Quantity)+" ") {
				t.Errorf("%s does not say how many", it.ID)
			}
			if slot := strings.LastIndex(sheet[:strings.Index(sheet, it.ID)], it.Slot+" "); it.Kit == "" && slot < 0 {
				t.Errorf("%s stands before its slot %s", it.ID, it.Slot)
			}
		}
	}
}

func TestThePutBackListIsTheLoadOrderWithWhoLifts(t *testing.T) {
	pic := demo(t, 125)
	list := text(t, pic, options(125), "putback_R41.pdf")
	at := 0
	table := pic.LoadUp("R41")
	if len(table.Rows) != 38 {
		t.Fatalf("%d rows", len(table.Rows))
	}
	for _, row := range table.Rows {
		i := strings.Index(flat(list[at:]), row[0]+" "+row[3]+" "+row[2]+" "+row[4]+" "+row[7])
		if i < 0 {
			t.Fatalf("step %s, %s, does not come in its turn", row[0], row[2])
		}
		if two := lineOf(list, row[2]+" "+row[4], "2 people"); two != (row[8] == "yes") {
			t.Errorf("%s: two people is %v", row[2], two)
		}
	}
	for _, door := range []string{"Door 1: L1, driver side", "Door 4: L4, driver side", "Door 11: roof box 2, top"} {
		if !strings.Contains(list, door) {
			t.Errorf("no heading %q", door)
		}
	}
}

func TestOpenListsAndReleaseSlipsHaveEveryOpenLine(t *testing.T) {
	for _, minute := range []int{60, 91, 125, 180} {
		pic := demo(t, minute)
		for _, r := range pic.State.Dept.Rigs {
			open, slip := text(t, pic, options(minute), "open_"+r.ID+".pdf"), text(t, pic, options(minute), "release_"+r.ID+".pdf")
			rows := pic.Leaving(r.ID).Rows
			if !strings.Contains(open, fmt.Sprintf("Open list, %d line", len(rows))) {
				t.Errorf("%s at %d: the title does not count %d lines", r.ID, minute, len(rows))
			}
			for _, row := range rows {
				if !lineOf(open, row[2]+" "+row[1][:min(12, len(row[1]))], row[0]) {
					t.Errorf("%s at %d: %q is not on the open list", r.ID, minute, row)
				}
				if !strings.Contains(slip, row[1]) {
					t.Errorf("%s at %d: %q is not on the slip", r.ID, minute, row)
				}
			}
			for _, word := range []string{"Officer of the rig: name, signature, time", "Driver", "Staging"} {
				if !strings.Contains(open, word) {
					t.Errorf("no line for %s to sign", word)
				}
			}
			if len(rows) == 0 && (!strings.Contains(open, "Nothing is open") || !strings.Contains(slip, "leaves nothing behind")) {
				t.Errorf("%s at %d: an empty list does not say so", r.ID, minute)
			}
		}
	}
}

func TestASlipHasANumberThatTellsOtherListsApart(t *testing.T) {
	seen := map[string]string{}
	for _, minute := range []int{60, 91, 94} {
		slip := text(t, demo(t, minute), options(minute), "release_E42.pdf")
		m := regexp.MustCompile(`Slip (\d{4})-(\d)`).FindStringSubmatch(slip)
		if m == nil {
			t.Fatal("the slip has no number")
		}
		if d, err := code.Damm(m[1] + m[2]); err != nil || d != '0' {
			t.Errorf("the check digit of %s is wrong", m[0])
		}
		if was, ok := seen[m[0]]; ok {
			t.Errorf("%s stands for two lists: %s", m[0], was)
		}
		seen[m[0]] = slip
	}
}

func TestTheCloseOutIsOnePageWithEveryLineThatIsLeft(t *testing.T) {
	for _, minute := range []int{-1, 60, 125, 180} {
		pic := demo(t, minute)
		p := find(t, paper.All(pic, options(minute)), "closeout.pdf")
		all := pages(t, printed(t, p))
		if len(all) != 1 {
			t.Errorf("at %d it has %d pages", minute, len(all))
		}
		open := 0
		for _, r := range pic.State.Books() {
			if r.Place.Kind != model.Used {
				open++
			}
		}
		for i := range pic.State.Dept.Items {
			if pic.State.Line(i).Contest != nil {
				open++
			}
		}
		want := fmt.Sprintf("Close-out with %d OPEN LINES", open)
		if open == 0 {
			want = "Close-out: no line is open"
		}
		if !strings.HasPrefix(strings.TrimSpace(all[0]), want) {
			t.Errorf("at %d its title is not %q", minute, want)
		}
		counted := 0
		for _, m := range regexp.MustCompile(`(?:unclear|Bring back|not ready|an officer|Lost|Restock): (\d+)`).FindAllStringSubmatch(all[0], -1) {
			n, _ := strconv.Atoi(m[1])
			counted += n
		}
		if left := len(pic.EndState().Rows); minute != 60 && counted != left {
			t.Errorf("at %d its parts count %d lines, the end state has %d", minute, counted, left)
		}
		if !strings.Contains(flat(all[0]), flat(pic.ProofLine(""))) {
			t.Errorf("at %d the balance is not on it", minute)
		}
	}
	if page := flat(text(t, demo(t, 60), options(60), "closeout.pdf")); !strings.Contains(page, "Fog nozzle 1 3/4 in (E42): still out at V1") {
		t.Error("it does not say where what is out is")
	}
	pic := demo(t, 180)
	page := flat(text(t, pic, options(180), "closeout.pdf"))
	for _, word := range []string{"Thermal camera (E42): battery: 70, by Dorothea Pruett", "Spring punch (R41)", "16 Absorbent pad (R41)", "Tool battery 2 (R41): charge; not ready"} {
		if !strings.Contains(page, word) {
			t.Errorf("it does not say %q", word)
		}
	}
}

func TestACloseOutThatIsTooLongSaysHowManyMoreAndWhere(t *testing.T) {
	pic := of(big(400, func(i int) string { return fmt.Sprintf("Step chock %d", i) }))
	pic.State = logged(pic.State, 400, func(i int) model.Act {
		return model.Act{Verb: model.PullOff, Item: fmt.Sprintf("R1-%04d", i), Quantity: 1, From: "home", To: "tarp"}
	})
	all := pages(t, printed(t, find(t, paper.All(pic, options(0)), "closeout.pdf")))
	if len(all) != 1 {
		t.Fatalf("%d pages", len(all))
	}
	m := regexp.MustCompile(`and (\d+) more: see the open lists`).FindStringSubmatch(all[0])
	if m == nil {
		t.Fatal("it does not say how many more")
	}
	more, _ := strconv.Atoi(m[1])
	if shown := strings.Count(all[0], "Step chock"); shown+more != 400 || shown < 40 {
		t.Errorf("%d shown, %d more", shown, more)
	}
}

func TestRestockTagsLostReportsAndActivityTellTheDemo(t *testing.T) {
	pic := demo(t, 180)
	list := text(t, pic, options(180), "restock.pdf")
	for _, row := range pic.Restock().Rows {
		order := row[12]
		if row[11] != "ORDER" {
			order = ""
		}
		if !lineOf(list, strings.Fields(row[0])[0], row[4]+" "+row[7]+" "+row[8], order) {
			t.Errorf("%q is not on the restock list", row)
		}
	}
	tags := flat(text(t, pic, options(180), "tags.pdf"))
	n := 0
	for _, row := range pic.EndState().Rows {
		if strings.Contains(row[5], "out of service") {
			n++
			if !strings.Contains(tags, row[0]) || !strings.Contains(tags, row[1]) {
				t.Errorf("no label for %q", row)
			}
		}
	}
	if got := strings.Count(tags, "OUT OF SERVICE"); got != n || n != 7 {
		t.Errorf("%d labels for %d lines", got, n)
	}
	for _, fault := range []string{"Fault: oxygen: 600", "Fault: chain: no", "Eli Krantz, 2026-11-14 19:48", "Sealed and contaminated"} {
		if !strings.Contains(tags, fault) {
			t.Errorf("no label says %q", fault)
		}
	}
	lost := flat(text(t, pic, options(180), "lost.pdf"))
	for _, word := range []string{"1 Spring punch", "R41-023", "Mark: R41 SPRING PUNCH", "1 of 2", "21:39 Imre Valcourt Looked for 1 Spring punch: the tarp and under it. not found", "21:42 Imre Valcourt Search closed, lost"} {
		if !strings.Contains(lost, word) {
			t.Errorf("the lost report does not say %q: %s", word, lost)
		}
	}
	activity := flat(text(t, pic, options(180), "activity.pdf"))
	for _, field := range []string{"ICS 214", "1. Incident name Two-car crash", "2. Operational period from 2026-11-14 18:50 to 2026-11-14 21:50", "3. Name Hanneke Doyle", "4. ICS position",
		"5. Home agency and unit Marrow Bend", "6. Resources assigned", "7. Activity log", "Hanneke Doyle took over staging", "8. Prepared by",
		"2026-11-14 21:48 Rescue 41 (R41) left. Imre Valcourt"} {
		if !strings.Contains(activity, field) {
			t.Errorf("the activity log has no %q", field)
		}
	}
}

func TestTheTarpSheetHasWhatLiesThereAndLinesToWriteOn(t *testing.T) {
	pic := demo(t, 60)
	sheet := text(t, pic, options(60), "tarp.pdf")
	for _, row := range pic.Glance().Rows {
		if (row[0] == "tarp" || strings.HasPrefix(row[0], "at:")) && !lineOf(sheet, row[6]+" "+row[5][:min(12, len(row[5]))], row[3]) {
			t.Errorf("%q is not on it", row)
		}
	}
	if n := strings.Count(sheet, "where to, or back"); n != 2 {
		t.Errorf("%d pages have lines to write on", n)
	}
}

func TestEmptyListsSaySo(t *testing.T) {
	for name, pic := range map[string]*board.Picture{"demo": demo(t, -1), "nothing in it": of(&model.Department{Rigs: []model.Rig{{ID: "R1"}}})} {
		id := pic.State.Dept.Rigs[0].ID
		for file, says := range map[string]string{"restock.pdf": "Nothing is to be replaced", "tags.pdf": "Nothing is out of service", "lost.pdf": "Nothing is lost",
			"closeout.pdf": "no line is open", "tarp.pdf": "0 lines lay on the tarp", "activity.pdf": "Nothing was logged",
			"putback_" + id + ".pdf": "Nothing of it is on the tarp", "open_" + id + ".pdf": "Nothing is open", "release_" + id + ".pdf": "It leaves nothing behind"} {
			if got := text(t, pic, options(0), file); !strings.Contains(got, says) || !strings.Contains(got, "Scene: none open") {
				t.Errorf("%s, %s: %s", name, file, got)
			}
		}
	}
	bare := of(&model.Department{Rigs: []model.Rig{{ID: "R1"}}})
	for _, file := range []string{"slots_R1.pdf", "labels-qr_R1.pdf", "labels-bars_R1.pdf"} {
		if got := text(t, bare, options(0), file); !strings.Contains(got, "no piece") {
			t.Errorf("%s: %s", file, got)
		}
	}
}
