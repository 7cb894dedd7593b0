package stores

import (
	"strings"
	"testing"
)

func TestAWorkbookInThePlaceOfASheetIsCalledOne(t *testing.T) {
	lines, problems := ReadSheet("sheet.xlsx", []byte("PK\x03\x04 and what follows in a zip"))
	if lines != nil || len(problems) != 1 || !strings.Contains(problems[0].Wrong, "workbook") || !strings.Contains(problems[0].Right, "CSV") {
		t.Errorf("%v, %v", lines, problems)
	}
}
