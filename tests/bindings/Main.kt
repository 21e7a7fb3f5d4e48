// The Kotlin binding gives the same answers as Rust: the vectors, every refusal, and a bike carried to another device.
//
// Run by `cargo xtask test --only kotlin`, which compiles it against the jar.

import java.io.File
import java.nio.file.Files
import kotlin.math.abs
import kotlin.reflect.KClass
import kotlin.reflect.full.primaryConstructor
import kotlin.system.exitProcess
import uniffi.layshaft_core.*
import uniffi.layshaft_door.*
import uniffi.layshaft_uniffi.*

/** A Saturday in winter, where local time is an hour ahead. */
val SATURDAY = Moment(1_768_035_600_000, Zone("Example", listOf(ZoneShift(0, 60))))

/** The offset of the layout number in the header of an SQLite file (user_version, big-endian). */
const val LAYOUT_AT = 60

var checks = 0
val faults = mutableListOf<String>()

/** Counts a check, and keeps it when it fails. */
fun check(what: String, holds: Boolean, found: Any?) {
    checks++
    if (!holds) faults += "$what: $found"
}

/** outOfRange -> OUT_OF_RANGE. */
fun constant(camel: String) = camel.replace(Regex("(?<!^)(?=[A-Z])"), "_").uppercase()

/** The refusal that an action ends with, or null. */
fun refusalOf(action: () -> Any?): Refusal? = try {
    action()
    null
} catch (refused: BenchException.Refused) {
    refused.refusal
}

/** The formula of a vector: the inputs with the vector's fields, inside the variant of that name. */
fun formulaOf(table: Map<String, Any>): Formula {
    val kind = (table["kind"] as String).replaceFirstChar { it.uppercase() }
    val variant = Formula::class.nestedClasses.first { it.simpleName == kind }.primaryConstructor
    val inputs = variant?.parameters?.single()?.type?.classifier as? KClass<*>
    val constructor = inputs?.primaryConstructor ?: error("$kind cannot be made")
    val values = constructor.parameters.associateWith { parameter ->
        val given = table[parameter.name] ?: error("$kind wants ${parameter.name}")
        when (parameter.type.classifier) {
            UInt::class -> (given as Long).toUInt()
            Double::class -> (given as Number).toDouble()
            else -> given
        }
    }
    require(values.size == table.size - 1) { "$kind does not take all of $table" }
    return variant.call(constructor.callBy(values)) as Formula
}

fun checkCase(bench: Bench, case: Case) {
    val ask = EvaluateAsk(formulaOf(case.inner("formula") ?: error("${case.label} has no formula")))
    val wanted = case.inner("refuses")
    if (wanted != null) {
        val refusal = refusalOf { bench.evaluate(ask) }
        val sameCode = refusal?.code?.name == constant(wanted["code"] as String)
        val sameField = "field" !in wanted || refusal?.field == wanted["field"]
        check(case.label, sameCode && sameField, "$refusal, wanted $wanted")
        return
    }
    val figures = bench.evaluate(ask).figures.associate { it.name to it.value }
    val within = (case.table["within"] as Number).toDouble()
    for ((name, value) in case.inner("gives") ?: error("${case.label} wants nothing")) {
        val found = figures[name]
        val near = found != null && abs(found - (value as Number).toDouble()) <= within
        check("${case.label} $name", near, "$found, wanted $value within $within")
    }
}

fun demoBench() = Bench.inMemory().also { it.loadDemo(LoadDemo(), SATURDAY) }

/** Every code is produced once, and says which field where there is one. */
fun checkRefusals(folder: File) {
    val bench = demoBench()
    val bundle = bench.bundle(BareAsk(), SATURDAY).bundle
    val newer = bundle.copyOf().also { it[LAYOUT_AT + 2] = 99 }
    fun receive(at: Bench, content: ByteArray) = at.receiveBundle(ReceiveBundle(content), SATURDAY)
    fun evaluate(formula: Formula) = bench.evaluate(EvaluateAsk(formula))
    fun startBike(at: Bench, name: String) = at.startBike(StartBike(Identity(name = name, invented = true)), SATURDAY)
    fun startCure(product: Product) = bench.startCure(StartCure(title = "Tank", product = product), SATURDAY)
    val bare = Product(name = "Tin", product = ProductKind.PAINT, typical = false)
    val backward = bare.copy(recoatFromHours = 10.0, recoatToHours = 2.0, fullCureHours = 48.0, atCelsius = 20.0)

    val cases = listOf<Triple<Code, String?, () -> Any?>>(
        Triple(Code.OUT_OF_RANGE, "frontTeeth") { bench.fitSprockets(FitSprockets(0u, 38u), SATURDAY) },
        Triple(Code.NOT_A_NUMBER, "celsius") { evaluate(Formula.DewPoint(DewPoint(Double.NaN, 50.0))) },
        Triple(Code.BAD_TEXT, "name") { startBike(bench, "  ") },
        Triple(Code.MISSING, "fullCureHours") { startCure(bare) },
        Triple(Code.CONFLICT, "recoatToHours") { startCure(backward) },
        Triple(Code.UNKNOWN, null) { bench.openBike(OpenBike("no such mark"), SATURDAY) },
        Triple(Code.UNREADABLE, "tyre") { evaluate(Formula.TyreDiameter(TyreDiameter("round"))) },
        Triple(Code.NOT_A_BUNDLE, null) { receive(bench, "this is a shopping list".toByteArray()) },
        Triple(Code.DAMAGED_BUNDLE, null) { receive(bench, bundle.copyOf(bundle.size / 2)) },
        Triple(Code.NEWER_SCHEMA, null) { receive(bench, newer) },
        Triple(Code.OTHER_BIKE, null) { Bench.inMemory().let { startBike(it, "Another"); receive(it, bundle) } },
        Triple(Code.STORAGE, null) { Bench.open(folder.path) },
        Triple(Code.UNREADABLE, "content") { Bench.open(File(folder, "language.sqlite").path, "{}") },
    )
    val before = bench.bundle(BareAsk(), SATURDAY).bundle
    for ((code, field, action) in cases) {
        val refusal = refusalOf(action)
        val same = refusal?.code == code && refusal.field == field && refusal?.message?.let(::say).orEmpty().isNotEmpty()
        check("the refusal $code", same, refusal)
    }
    check("nothing was stored by what was refused", bench.bundle(BareAsk(), SATURDAY).bundle.contentEquals(before), "it was")
    // A request that cannot be understood is ruled out by the types.
    val left = Code.entries - cases.map { it.first }.toSet() - Code.BAD_REQUEST
    check("every code is produced", left.isEmpty(), left)
}

/** What was done is in the file, and a bundle brings it to another device. */
fun checkCarrying(folder: File) {
    val path = File(folder, "bench.sqlite").path
    val first = Bench.open(path)
    first.loadDemo(LoadDemo(), SATURDAY)
    first.fitSprockets(FitSprockets(16u, 38u), SATURDAY)
    val wanted = first.gearing(GearingAsk(), SATURDAY)
    val bundle = first.bundle(BareAsk(), SATURDAY).bundle
    first.close()
    check("the file keeps what was done", Bench.open(path).gearing(GearingAsk(), SATURDAY) == wanted, "it does not")
    val other = Bench.inMemory()
    other.receiveBundle(ReceiveBundle(bundle, true), SATURDAY)
    val shelf = other.shelf(BareAsk(), SATURDAY)
    if (shelf.open == null) other.openBike(OpenBike(shelf.bikes.first().id), SATURDAY)
    check("a bundle carries it to another device", other.gearing(GearingAsk(), SATURDAY) == wanted, "it does not")
}

fun main(arguments: Array<String>) {
    val cases = readCases(File(arguments.first()))
    val bench = Bench.inMemory()
    cases.forEach { checkCase(bench, it) }
    val folder = Files.createTempDirectory("layshaft-kotlin").toFile()
    try {
        checkRefusals(folder)
        checkCarrying(folder)
    } finally {
        folder.deleteRecursively()
    }
    faults.forEach(::println)
    println("Kotlin binding: $checks checks, ${faults.size} failed")
    if (faults.isNotEmpty() || checks < 100) exitProcess(1)
}
