// The script of every page. No page needs it: each action is a form that posts
// and a link that loads. htmx turns the marked ones into partial swaps.
import "htmx.org";
import "./page";
