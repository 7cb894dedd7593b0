package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"
)

// fits checks that no line is wider than a page.
func fits(t *testing.T, name, text string) {
	t.Helper()
	for _, l := range strings.Split(text, "\n") {
		if n := utf8.RuneCountInString(l); n > width {
			t.Errorf("%s: %d letters in a line: %s", name, n, l)
		}
		if strings.TrimRight(l, " ") != l {
			t.Errorf("%s: blanks at the end of %q", name, l)
		}
	}
}

func TestHelpExplainsEveryCommandWithAnExample(t *testing.T) {
	d := newDesk(t)
	all := d.must("help")
	fits(t, "help", all)
	for _, ask := range [][]string{{"-h"}, {"--help"}, {"help", "help"}} {
		if got := d.must(ask...); got != all {
			t.Errorf("%q is not the help", ask)
		}
	}
	for _, cmd := range commands() {
		if !strings.Contains(all, "    "+cmd.name+" ") || !strings.Contains(all, cmd.short) {
			t.Errorf("the help does not name %s", cmd.name)
		}
		one := d.must("help", cmd.name)
		fits(t, cmd.name, one)
		if !strings.HasPrefix(one, "tarpline "+cmd.usage()+"\n") || !strings.Contains(one, "\nExample\n\n    tarpline "+cmd.name) {
			t.Errorf("help %s: %s", cmd.name, one)
		}
		for _, option := range strings.Fields(cmd.options) {
			if !strings.Contains(one, "    -"+option+" ") {
				t.Errorf("help %s does not explain -%s", cmd.name, option)
			}
		}
		for _, ask := range [][]string{{cmd.name, "-h"}, {"-h", cmd.name}, {cmd.name, "--help"}} {
			if got := d.must(ask...); got != one {
				t.Errorf("%q is not the help of %s", ask, cmd.name)
			}
		}
	}
	if _, err := os.Stat(d.db); err == nil {
		t.Error("asking for help made a department file")
	}
}

func TestWhatIsNotUnderstoodExits2AndSaysWhatIsMeant(t *testing.T) {
	d := newDesk(t)
	for _, c := range []struct {
		args, says string
	}{
		{"", "what shall it do?"},
		{"fly", `there is no command "fly"`},
		{"help fly", `there is no command "fly"`},
		{"where -fast", "there is no option -fast"},
		{"where -rig R41", "where does not take -rig"},
		{"backup x -csv", "backup does not take -csv"},
		{"where home", "it is: tarpline where;"},
		{"replay", "it is: tarpline replay SCENE.csv|-;"},
		{"replay a b", "it is: tarpline replay"},
		{"replay a -until", "something must stand behind -until"},
		{"replay a -until soon", "soon"},
		{"stores load", "it is: tarpline stores load DIR"},
		{"stores drop x", "tarpline stores load DIR, or tarpline stores save DIR"},
		{"stores save x -dry", "stores save takes no options"},
		{"loadup", "which rig?"},
		{"leaving -csv", "which rig?"},
		{"leaving R41 -rig E42", "R41 or E42?"},
		{"leaving R41 E42", "it is: tarpline leaving RIG;"},
		{"backup", "it is: tarpline backup FILE"},
		{"restore", "it is: tarpline restore FILE"},
		{"replay " + demoScene + " -start today", "a date and time is written"},
		{"replay " + demoScene + " -start 2026-11-31T18:50:00Z", "no day of the calendar"},
	} {
		_, _, errs := d.run(strings.Fields(c.args)...)
		if c.args != "" {
			errs = d.fails(misused, strings.Fields(c.args)...)
		} else if code, _, _ := d.run(); code != misused {
			t.Errorf("nothing asked: exit %d", code)
		}
		if !strings.Contains(errs, c.says) {
			t.Errorf("%s: %q, want %q", c.args, errs, c.says)
		}
	}
	if _, err := os.Stat(d.db); err == nil {
		t.Error("a misunderstanding made a department file")
	}
}

func TestOptionsMayStandAnywhere(t *testing.T) {
	d := loadedDesk(t)
	want := d.must("leaving", "-rig", "R41", "-csv")
	for _, args := range [][]string{
		{"-csv", "leaving", "-rig", "R41"}, {"-rig=R41", "--csv", "leaving"}, {"-rig", "R41", "leaving", "-csv=true"}, {"-csv", "-rig", "r41", "leaving"},
		{"leaving", "R41", "-csv"}, {"leaving", "-csv", "r41"}, {"leaving", "R41", "-rig", "r41", "-csv"},
	} {
		if got := d.must(args...); got != want {
			t.Errorf("%q: %q", args, got)
		}
	}
	if code, _, errs := d.bare("leaving", "-rig", "R41", "-csv", "-db", d.db); code != 0 {
		t.Error(errs)
	}
	d.fails(failed, "backup", "--", "-no-such-folder/x") // after -- a word, not an option
}

func TestWithoutANameTheFileIsTheOneInTheDataFolder(t *testing.T) {
	d := newDesk(t)
	if code, _, errs := d.bare("where"); code != failed || !strings.Contains(errs, "-db FILE") {
		t.Errorf("without any data folder: exit %d, %s", code, errs)
	}
	d.env["XDG_DATA_HOME"] = t.TempDir()
	file := filepath.Join(d.env["XDG_DATA_HOME"], "tarpside", "department.db")
	if code, _, errs := d.bare("where"); code != failed || !strings.Contains(errs, file) {
		t.Errorf("exit %d, %s", code, errs)
	}
	if _, err := os.Stat(filepath.Dir(file)); err == nil {
		t.Error("a look made the folder")
	}
	if code, _, errs := d.bare("stores", "load", demoTables); code != 0 {
		t.Fatalf("exit %d, %s", code, errs)
	}
	if code, out, errs := d.bare("where"); code != 0 || out != "Everything is home.\n" {
		t.Errorf("exit %d, %q, %s", code, out, errs)
	}
	if _, err := os.Stat(file); err != nil {
		t.Error(err)
	}
}
