package org.capwright.json.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.capwright.json.style.SizeRunSchema;
import org.capwright.measure.Dimension;
import org.capwright.measure.SleeveSubject;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;
import org.capwright.tables.TableSubject;
import org.junit.jupiter.api.Test;

class RequestPlacesTest {

    /** One of each kind of subject, with its place. */
    private static final Map<Subject, String> PLACES = Map.of(
            Dimension.CAP_HEIGHT,
            "/sleeve/capHeight",
            SleeveSubject.Option.CAP_EASE,
            "/sleeve/capEase",
            new SleeveSubject.GradeOf(Dimension.FRONT_WIDTH),
            "/grade/frontWidth",
            new SleeveSubject.GrowthAt(Dimension.FRONT_WIDTH, 3),
            "/grade/frontWidth/3",
            new SleeveSubject.PairsOf("36/a~b"),
            "/materials/order/36~1a~0b",
            new SleeveSubject.Seam("underarm seam"),
            "",
            new SleeveSubject.AllowanceOf("hem"),
            "/seamAllowance/hem",
            new SleeveSubject.Cloth(2, SleeveSubject.ClothFigure.WIDTH),
            "/materials/fabrics/2/width",
            SleeveSubject.ClothFigure.WASTE,
            "/materials/fabrics");

    private static final Map<Subject, String> TABLE_PLACES = Map.of(
            TableSubject.Field.FIGURE_TYPE,
            "/figureType",
            new TableSubject.Size(3),
            "/sizes/3",
            new TableSubject.RowDimension(1),
            "/rows/1/dimension",
            new TableSubject.RowValues(1),
            "/rows/1/values",
            new TableSubject.Figure(1, 3),
            "/rows/1/values/3",
            new TableSubject.Argument("confidence"),
            "");

    private static Set<Class<?>> kinds(Class<?> sealed) {
        return new HashSet<>(Arrays.asList(sealed.getPermittedSubclasses()));
    }

    private static Set<Class<?>> kinds(Map<Subject, String> places) {
        return places.keySet().stream().map(Object::getClass).collect(Collectors.toSet());
    }

    /** A new kind of subject fails here until somebody says where it stands. */
    @Test
    void everyKindOfSubjectHasAPlace() {
        assertEquals(kinds(SleeveSubject.class), kinds(PLACES));
        assertEquals(kinds(TableSubject.class), kinds(TABLE_PLACES));
        Stream.of(PLACES, TABLE_PLACES)
                .flatMap(places -> places.entrySet().stream())
                .forEach(place -> assertEquals(place.getValue(), RequestPlaces.USUAL.of(place.getKey())));
    }

    /** The first field of a place is one of the request, and no two dimensions share a place. */
    @Test
    void placesAreFieldsOfTheRequest() {
        Stream.<Subject>concat(Stream.of(Dimension.values()), Stream.of(SleeveSubject.Option.values()))
                .map(RequestPlaces.USUAL::of)
                .forEach(place -> assertTrue(SizeRunSchema.REQUEST.fields().containsKey(place.split("/")[1]), place));
        List<String> dimensions =
                Stream.of(Dimension.values()).map(RequestPlaces.USUAL::of).toList();
        assertEquals(dimensions.size(), Set.copyOf(dimensions).size());
    }

    @Test
    void theSizeStandsBeforeTheReason() {
        FoundViolations found = new FoundViolations(Unit.CENTIMETRE);
        found.addAll(
                List.of(Violation.lengthAbove(Dimension.WRIST, "too wide", 300, 251.23456)
                        .inSize("38")),
                RequestPlaces.USUAL.within("/sizeRun"));
        assertEquals("/sizeRun/underSleeve/wrist", found.list().get(0).field());
        assertEquals(
                "size 38: too wide: 30 cm; 25.1234 cm or less would work",
                found.list().get(0).reason().toString());
    }
}
