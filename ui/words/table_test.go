package words

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the English table anew from the texts that the window asks for")

// wanted are the texts that the window asks for.
func wanted(t *testing.T) map[string]Entry {
	t.Helper()
	out := map[string]Entry{}
	for _, f := range sources(t) {
		for _, u := range uses(f) {
			e, seen := out[u.key]
			e.Key = u.key
			if e.Other = u.key; u.how == "N" {
				if seen && e.One != "" && e.One != u.one {
					t.Errorf("%s: %q has %q for one elsewhere", u.where, u.key, e.One)
				}
				e.One = u.one
			}
			out[u.key] = e
		}
	}
	for key := range makes(t) {
		e := out[key]
		e.Key, e.Other, e.Description = key, key, Made
		out[key] = e
	}
	return out
}

func TestEveryTextOfTheWindowIsInTheEnglishTableAndNoOtherIs(t *testing.T) {
	want := wanted(t)
	if *update {
		write(t, want)
	}
	have, err := English()
	if err != nil {
		t.Fatal(err)
	}
	for key, e := range want {
		switch got, ok := have[key]; {
		case !ok && !*update:
			t.Errorf("%q is not in base.en.json: go test ./ui/words -update puts it there", key)
		case ok && got.Description != e.Description:
			t.Errorf("%q: the table says wrong whether model or board makes it", key)
		case ok && (got.One == "") != (e.One == ""):
			t.Errorf("%q: the table and the window do not agree whether it has a number", key)
		}
	}
	for key := range have {
		if _, ok := want[key]; !ok && !*update {
			t.Errorf("%q is in base.en.json, and nothing asks for it", key)
		}
	}
}

// write writes the table; texts that are there keep what stands for them.
func write(t *testing.T, want map[string]Entry) {
	t.Helper()
	have, err := English()
	if err != nil {
		t.Fatal(err)
	}
	var out []Entry
	for key, e := range want {
		if got, ok := have[key]; ok && (got.One == "") == (e.One == "") {
			got.Description = e.Description
			e = got
		}
		out = append(out, e)
	}
	slices.SortFunc(out, func(a, b Entry) int { return strings.Compare(a.Key, b.Key) })
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(out); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("base.en.json", b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

var verbsOf = regexp.MustCompile(`%[-+# 0]*(\[\d+\])?[0-9.]*[a-zA-Z%]`)

// verbs are the verbs of a format in the order of what they stand for.
func verbs(s string) []string {
	out := verbsOf.FindAllString(s, -1)
	slices.Sort(out)
	return out
}

func TestAFormatOfTheTableHasTheVerbsOfItsKey(t *testing.T) {
	have, err := English()
	if err != nil {
		t.Fatal(err)
	}
	for key, e := range have {
		for _, s := range []string{e.Other, e.One, pseudo(e.Other)} {
			if s != "" && !slices.Equal(verbs(s), verbs(key)) {
				t.Errorf("%q has other verbs than its key %q", s, key)
			}
		}
	}
}

func TestAFormatIsFilledInWithAsManyAsItAsksFor(t *testing.T) {
	for _, f := range sources(t) {
		for _, u := range uses(f) {
			n := len(slices.DeleteFunc(verbs(u.key), func(v string) bool { return v == "%%" }))
			switch {
			case u.args >= 0 && n != u.args:
				t.Errorf("%s: %q asks for %d, and is given %d", u.where, u.key, n, u.args)
			case u.how == "N" && u.args < 0 && n > 1:
				t.Errorf("%s: %q asks for more than its number", u.where, u.key)
			}
		}
	}
}
