// Package heat computes temperature and degree of cure through a stack.
package heat
