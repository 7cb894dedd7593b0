package main

import (
	"strings"
	"testing"
)

func TestListsForPeopleFitAPageAndNameWhatTheTablesHave(t *testing.T) {
	d, _ := playedDesk(t, demoScene, "")
	mid, _ := playedDesk(t, demoScene, "125")
	for _, c := range []struct {
		d    *desk
		args string
		has  []string
	}{
		{d, "where", []string{"R41-052", "with Quillan County", "Giles Fenwick"}},
		{mid, "glance", []string{"on the tarp: ", "at V2: ", "(car down the bank)", "If sent now", "Step chock"}},
		{mid, "loadup -rig R41", []string{"L1, driver side", "two people", "R41-034"}},
		{d, "leaving -rig R41", []string{"Spring punch", "lost", "Carries for others: ", "2 Wedge 4x4 (P71)"}},
		{d, "ready", []string{"Thermal camera", "not ready", "ready, short"}},
		{d, "restock", []string{"Absorbent pad", "R41:16", "order"}},
		{d, "bringback", []string{"Head block set", "Della Birch"}},
		{d, "proof", []string{"344 came off = 257 home again · 16 carried · 15 with others · 2 charging · 2 bagged · 51 used", "S44   0 came off", "R41-184"}},
		{d, "verify", []string{"ok     Every one of the 325 lines adds up"}},
	} {
		out := c.d.must(strings.Fields(c.args)...)
		fits(t, c.args, out)
		for _, w := range c.has {
			if !strings.Contains(out, w) {
				t.Errorf("%s: %q is not in\n%s", c.args, w, out)
			}
		}
	}
}

func TestAnEmptyListSaysSo(t *testing.T) {
	d := loadedDesk(t)
	for args, want := range map[string]string{
		"where": "Everything is home.", "glance": "Nothing is out.", "ready": "Every rig has all of what it may be sent for.",
		"restock": "Nothing is to be replaced.", "bringback": "Nobody else has anything of ours.",
		"loadup -rig R41": "Nothing of Rescue 41 is on the tarp.", "leaving -rig E42": "All of Engine 42 is home, or was used.",
	} {
		if got := d.must(strings.Fields(args)...); got != want+"\n" {
			t.Errorf("%s: %q", args, got)
		}
		if rows := d.csv(strings.Fields(args)...); len(rows) != 1 {
			t.Errorf("%s: as CSV it has %d rows beside the header", args, len(rows)-1)
		}
	}
}

func TestARigThatIsNotThereIsAnsweredWithThoseThatAre(t *testing.T) {
	d := loadedDesk(t)
	for _, cmd := range []string{"loadup", "leaving"} {
		errs := d.fails(failed, cmd, "-rig", "R14")
		for _, w := range []string{`"R14"`, "R41 (Rescue 41)", "E42 (Engine 42)", "S44", "P71"} {
			if !strings.Contains(errs, w) {
				t.Errorf("%s: %q is not in %s", cmd, w, errs)
			}
		}
	}
	d.replies("open,M01,,,,,,,", "arrive,M01,,T9,,,,,")
	if got := d.must("leaving", "-rig", "T9"); got != "All of T9 is home, or was used.\n" {
		t.Errorf("a rig that arrived under a new name: %q", got)
	}
}

func TestLinesAreBrokenBetweenWordsAndNeverTooLong(t *testing.T) {
	for _, c := range []struct {
		text string
		most int
		want string
	}{
		{"", 5, ""}, {"a", 1, "a"}, {"one two three", 7, "one two|three"}, {"one two three", 3, "one|two|thr|ee"},
		{"  spare   blanks ", 20, "spare blanks"}, {"ééé ééé", 3, "ééé|ééé"}, {"abcdef", 2, "ab|cd|ef"}, {"a bcdef", 3, "a|bcd|ef"},
	} {
		if got := strings.Join(wrap(c.text, c.most), "|"); got != c.want {
			t.Errorf("%q to %d: %q, want %q", c.text, c.most, got, c.want)
		}
	}
	rows := grid([]field{{"name", false}, {"n", true}}, [][]string{{strings.Repeat("word ", 40), "5"}, {"x", "12"}})
	fits(t, "grid", strings.Join(rows, "\n"))
	if last := rows[len(rows)-1]; !strings.HasPrefix(last, "x ") || !strings.HasSuffix(last, "  12") {
		t.Errorf("%q", last)
	}
}
