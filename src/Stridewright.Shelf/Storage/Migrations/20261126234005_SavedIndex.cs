using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Stridewright.Shelf.Storage.Migrations
{
    /// <inheritdoc />
    public partial class SavedIndex : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateIndex(name: "IX_Versions_Saved", table: "Versions", column: "Saved");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(name: "IX_Versions_Saved", table: "Versions");
        }
    }
}
