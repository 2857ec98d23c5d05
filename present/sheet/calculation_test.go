package sheet_test

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"scarfwright/present/sheet"
	"scarfwright/repair/catalog"
	"scarfwright/repair/caution"
	"scarfwright/repair/demo"
	"scarfwright/repair/ways"
)

// A pocket calculator of its own, for the test shares nothing with what wrote the
// sheet: Dijkstra's two stacks over the tokens of a printed line.
var token = regexp.MustCompile(`^\s*([0-9]+\.?[0-9]*(?:e[-+][0-9]+)?|[A-Za-z][A-Za-z0-9_]*|[-+×/^(),])`)

var rank = map[string]int{"+": 1, "-": 1, "×": 2, "/": 2, "neg": 3, "^": 4}

func pocket(line string, symbols map[string]float64) (float64, error) {
	var nums []float64
	var ops []string
	var counts []int // arguments of the open functions
	apply := func() error {
		op := ops[len(ops)-1]
		ops = ops[:len(ops)-1]
		need := 2
		if op == "neg" {
			need = 1
		}
		if len(nums) < need {
			return fmt.Errorf("%q: %s lacks a number", line, op)
		}
		b := nums[len(nums)-1]
		nums = nums[:len(nums)-need]
		if op == "neg" {
			nums = append(nums, -b)
			return nil
		}
		a := nums[:len(nums)+1][len(nums)]
		nums = append(nums, map[string]float64{"+": a + b, "-": a - b, "×": a * b, "/": a / b, "^": math.Pow(a, b)}[op])
		return nil
	}
	operand := true // a number is expected
	for rest := strings.TrimSpace(line); rest != ""; rest = strings.TrimSpace(rest) {
		m := token.FindStringSubmatch(rest)
		if m == nil {
			return 0, fmt.Errorf("%q: cannot read %q", line, rest)
		}
		rest = rest[len(m[0]):]
		switch t := m[1]; {
		case t == "sqrt" || t == "max" || t == "min" || t == "abs":
			ops = append(ops, t)
			counts = append(counts, 1)
		case t == "(":
			ops = append(ops, "(")
		case t == ")" || t == ",":
			for len(ops) > 0 && ops[len(ops)-1] != "(" {
				if err := apply(); err != nil {
					return 0, err
				}
			}
			if len(ops) == 0 {
				return 0, fmt.Errorf("%q: parentheses", line)
			}
			if t == "," {
				counts[len(counts)-1]++
				operand = true
				continue
			}
			ops = ops[:len(ops)-1]
			operand = false
			if n := len(ops); n > 0 && rank[ops[n-1]] == 0 && ops[n-1] != "(" {
				k := counts[len(counts)-1]
				args := nums[len(nums)-k:]
				v := args[0]
				for _, a := range args[1:] {
					if ops[n-1] == "max" {
						v = math.Max(v, a)
					} else {
						v = math.Min(v, a)
					}
				}
				switch ops[n-1] {
				case "sqrt":
					v = math.Sqrt(v)
				case "abs":
					v = math.Abs(v)
				}
				nums = append(nums[:len(nums)-k], v)
				ops, counts = ops[:n-1], counts[:len(counts)-1]
			}
		case rank[t] > 0:
			if operand {
				if t != "-" {
					return 0, fmt.Errorf("%q: %s has nothing on its left", line, t)
				}
				ops = append(ops, "neg")
				continue
			}
			for len(ops) > 0 && (rank[ops[len(ops)-1]] > rank[t] || rank[ops[len(ops)-1]] == rank[t] && t != "^") {
				if err := apply(); err != nil {
					return 0, err
				}
			}
			ops = append(ops, t)
			operand = true
		default:
			v, err := strconv.ParseFloat(t, 64)
			if s, known := symbols[t]; known {
				v, err = s, nil
			}
			if err != nil {
				return 0, fmt.Errorf("%q: %s is not known", line, t)
			}
			nums = append(nums, v)
			operand = false
		}
	}
	for len(ops) > 0 {
		if err := apply(); err != nil {
			return 0, err
		}
	}
	if len(nums) != 1 {
		return 0, fmt.Errorf("%q leaves %v", line, nums)
	}
	return nums[0], nil
}

var (
	lineStart  = regexp.MustCompile(`(?m)^L(\d+)\s`)
	symbolLike = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9_]*$`)
	resultOf   = regexp.MustCompile(`^(-?[0-9]+\.?[0-9]*(?:e[-+][0-9]+)?)`)
)

// recompute goes through the text of a calculation sheet as a person with a pocket
// calculator does: it works every line from the numbers printed in it, and again from
// its symbols and the results above, and compares to three digits.
func recompute(text string) (worked, given int, err error) {
	starts := lineStart.FindAllStringSubmatchIndex(text, -1)
	symbols := map[string]float64{}
	for i, at := range starts {
		end := len(text)
		if i+1 < len(starts) {
			end = starts[i+1][0]
		}
		block := text[at[0]:end]
		if cut := strings.Index(block, "CALCULATION SHEET"); cut > 0 {
			block = block[:cut]
		}
		if n := text[at[2]:at[3]]; n != strconv.Itoa(i+1) {
			return worked, given, fmt.Errorf("line L%s stands where L%d should", n, i+1)
		}
		parts := strings.Split(strings.Join(strings.Fields(block), " "), " = ")
		last := resultOf.FindString(parts[len(parts)-1])
		result, e := strconv.ParseFloat(last, 64)
		if e != nil {
			return worked, given, fmt.Errorf("L%d: no result in %q", i+1, parts)
		}
		if len(parts) == 2 { // given: "L1 source SYMBOL, words = value"
			head := strings.Split(parts[0], ", ")
			for _, h := range head[:len(head)-1] {
				words := strings.Fields(h)
				if w := words[len(words)-1]; symbolLike.MatchString(w) {
					symbols[w] = result // the symbol is the last word before a comma, somewhere
				}
			}
			given++
			continue
		}
		if len(parts) != 4 {
			return worked, given, fmt.Errorf("L%d: %d parts in %q", i+1, len(parts), parts)
		}
		words := strings.Fields(parts[0])
		symbol := words[len(words)-1]
		for _, line := range []string{parts[1], parts[2]} {
			v, e := pocket(line, symbols)
			if e != nil {
				return worked, given, fmt.Errorf("L%d: %w", i+1, e)
			}
			if math.Abs(v-result) > 0.5e-3*math.Abs(result)+1e-300 {
				return worked, given, fmt.Errorf("L%d: %s = %s comes to %.5g, the sheet says %s", i+1, symbol, line, v, last)
			}
		}
		symbols[symbol] = result
		worked++
	}
	return worked, given, nil
}

func TestPocketCalculator(t *testing.T) {
	for _, name := range []string{"day-launch", "sloop", "trawler-yacht", "rib-console", "work-skiff"} {
		if testing.Short() && name != "sloop" {
			continue
		}
		d, err := demo.Parse(name)
		if err != nil {
			t.Fatal(err)
		}
		r, err := ways.Compare(d, catalog.Default(), nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, paper := range []string{"A4", "Letter"} {
			var b bytes.Buffer
			if err := sheet.CalculationSheet(&b, d, r, options(paper, "metric")); err != nil {
				t.Fatal(err)
			}
			text := pdftotext(t, b.Bytes(), "-raw")
			worked, given, err := recompute(text)
			if err != nil {
				t.Errorf("%s, %s: %v", name, paper, err)
			}
			if all := len(r.Calculation.Book.Entries); worked+given != all || worked < 15 {
				t.Errorf("%s, %s: %d lines worked and %d given of %d", name, paper, worked, given, all)
			}
			pages := strings.Split(strings.TrimSuffix(text, "\f"), "\f")
			for i, page := range pages {
				page = strings.Join(strings.Fields(page), " ")
				for _, want := range []string{caution.General, fmt.Sprintf("page %d of %d", i+1, len(pages)), "input hash", "CALCULATION SHEET"} {
					if !strings.Contains(page, want) {
						t.Errorf("%s, %s, page %d does not say %q", name, paper, i+1, want)
					}
				}
			}
			all := strings.Join(strings.Fields(text), " ")
			first := strings.Join(strings.Fields(pages[0]), " ")
			for _, want := range []string{"Intended use", "Loads", "Assumptions"} {
				if len(r.Referrals) == 0 && !strings.Contains(first, want) {
					t.Errorf("%s, %s: %q is not on the first page", name, paper, want)
				}
			}
			for _, want := range []string{"Outside the range of a formula", "(governs)", "originator", "checker", "another person", "own estimate of its error", "Sketch"} {
				if !strings.Contains(all, want) {
					t.Errorf("%s, %s: no %q", name, paper, want)
				}
			}
			if len(r.Referrals) > 0 && !strings.Contains(first, "STOP") {
				t.Errorf("%s, %s: the stop is not on the first page", name, paper)
			}
			if name == "sloop" && paper == "A4" {
				alter(t, text)
			}
		}
	}
}

// alter turns one digit in each of many results of the sheet: the calculator finds
// every one.
func alter(t *testing.T, text string) {
	t.Helper()
	tried := 0
	for _, m := range regexp.MustCompile(`(?m)^= (\d)(\d*\.?\d*) (N|mm|MPa|1/mm)`).FindAllStringSubmatchIndex(text, -1) {
		digit := text[m[2]:m[3]]
		changed := text[:m[2]] + strconv.Itoa((int(digit[0]-'0')+1)%9+1) + text[m[3]:]
		if changed == text {
			continue
		}
		tried++
		if _, _, err := recompute(changed); err == nil {
			t.Errorf("a changed digit passes: %q", text[m[0]:m[1]])
		}
	}
	if tried < 20 {
		t.Errorf("only %d digits were changed", tried)
	}
}
