// Reads the vectors: as much of TOML as they use. Anything else ends the run, so that no case is skipped unseen.

import java.io.File

/** One case of a vector file. */
class Case(val label: String, val table: Map<String, Any>) {
    /** An inner table, or null when the case has none of that name. */
    @Suppress("UNCHECKED_CAST")
    fun inner(name: String): Map<String, Any>? = table[name] as Map<String, Any>?
}

/** Every case of every vector file below a folder. */
fun readCases(folder: File): List<Case> =
    folder.walk().filter { it.extension == "toml" }.sorted().flatMap { readFile(it) }.toList()

private fun readFile(file: File): List<Case> {
    val tables = mutableListOf<MutableMap<String, Any>>()
    for (line in file.readLines().map { it.trim() }) {
        when {
            line.isEmpty() || line.startsWith("#") -> continue
            line == "[[case]]" -> tables += mutableMapOf<String, Any>()
            // What stands before the first case, the source and its standing, is checked in Rust.
            tables.isEmpty() -> Line(line).pair()
            else -> tables.last() += Line(line).pair()
        }
    }
    return tables.map { Case("${file.name}: ${it["name"]}", it) }
}

/** One line, read from left to right. */
private class Line(private val text: String) {
    private var at = 0

    fun pair(): Pair<String, Any> = entry().also { if (at != text.length) stop() }

    private fun entry(): Pair<String, Any> {
        val name = take { it.isLetterOrDigit() || it == '_' || it == '-' }
        if (name.isEmpty()) stop()
        expect('=')
        return name to value()
    }

    private fun value(): Any {
        skipSpace()
        return when (text.getOrNull(at)) {
            '"' -> string()
            '{' -> table()
            '[' -> list()
            else -> scalar(take { it != ',' && it != '}' && it != ']' && it != ' ' && it != '#' })
        }
    }

    private fun string(): String {
        expect('"')
        val content = take { it != '"' }
        if ('\\' in content) stop()
        expect('"')
        return content
    }

    private fun table(): Map<String, Any> {
        val entries = mutableMapOf<String, Any>()
        expect('{')
        while (!found('}')) {
            entries += entry()
            if (!found(',')) {
                expect('}')
                break
            }
        }
        return entries
    }

    private fun list(): List<Any> {
        val items = mutableListOf<Any>()
        expect('[')
        while (!found(']')) {
            items += value()
            if (!found(',')) {
                expect(']')
                break
            }
        }
        return items
    }

    private fun scalar(word: String): Any = when (word) {
        "true" -> true
        "false" -> false
        "nan" -> Double.NaN
        "inf" -> Double.POSITIVE_INFINITY
        "-inf" -> Double.NEGATIVE_INFINITY
        else -> word.replace("_", "").let { it.toLongOrNull() ?: it.toDoubleOrNull() } ?: stop()
    }

    private fun take(wanted: (Char) -> Boolean): String {
        skipSpace()
        val begin = at
        while (at < text.length && wanted(text[at])) at++
        return text.substring(begin, at)
    }

    private fun found(mark: Char): Boolean {
        skipSpace()
        return (text.getOrNull(at) == mark).also { if (it) at++ }
    }

    private fun expect(mark: Char) {
        if (!found(mark)) stop()
    }

    private fun skipSpace() {
        while (text.getOrNull(at) == ' ') at++
    }

    private fun stop(): Nothing = error("cannot read `$text` at $at")
}
