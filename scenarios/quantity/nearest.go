package quantity

import "strings"

// Nearest is the known word that was most likely meant, or "" when none is near enough: at most a third of
// its letters, and no more than 4, may be wrong. A word of more than 100 letters is near to none. Upper and lower case count as the same; among equals the first wins.
func Nearest(word string, known []string) string {
	letters := len([]rune(word))
	if letters > 100 {
		return ""
	}
	limit := min(max((letters+1)/3, 1), letters-1, 4)
	best, nearest := limit+1, ""
	for _, k := range known {
		if strings.EqualFold(word, k) {
			return k
		}
		if d := distance(strings.ToLower(word), strings.ToLower(k), best); d < best {
			best, nearest = d, k
		}
	}
	return nearest
}

// distance is the number of letters to insert, drop, change or swap with their neighbour to make b of a
// (Damerau 1964; Levenshtein 1966; each letter touched once). It stops counting at limit.
func distance(a, b string, limit int) int {
	s, t := []rune(a), []rune(b)
	if abs(len(s)-len(t)) >= limit {
		return limit
	}
	before, last, row := make([]int, len(t)+1), make([]int, len(t)+1), make([]int, len(t)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(s); i++ {
		before, last, row = last, row, before
		row[0] = i
		for j := 1; j <= len(t); j++ {
			change := last[j-1]
			if s[i-1] != t[j-1] {
				change++
			}
			row[j] = min(change, last[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && s[i-1] == t[j-2] && s[i-2] == t[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
	}
	return row[len(t)]
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}
